#include "core/storage/checksum.h"

#include "tests/core/storage/scratch.h"

#include <fstream>

namespace plumule {
namespace {

// The check value of CRC-64/ECMA-182, from memory.
TEST(Checksum, IsTheOneOfItsPolynomial)
{
    EXPECT_EQ(static_cast<std::uint64_t>(checksumOf("123456789")), 0x6C40DF5F0B497347ULL);
    EXPECT_EQ(checksumOf(""), 0);
}

TEST(Checksum, SeesEveryFlippedBitAndEveryPairOfSwappedBytes)
{
    const std::string text = "tray RD029, 331.5 g net";
    const std::int64_t whole = checksumOf(text);
    for (std::size_t i = 0; i < text.size(); ++i) {
        for (int bit = 0; bit < 8; ++bit) {
            std::string flipped = text;
            flipped[i] = static_cast<char>(flipped[i] ^ (1 << bit));
            EXPECT_NE(checksumOf(flipped), whole) << i << '.' << bit;
        }
        std::string swapped = text;
        std::swap(swapped[i], swapped[0]);
        EXPECT_EQ(checksumOf(swapped) == whole, swapped == text) << i;
    }
}

TEST(Checksum, OfAFileIsThatOfItsBytesHoweverMany)
{
    const ScratchFolder folder;
    std::string bytes;
    for (int i = 0; i < 200'000; ++i) { // more than is read at a time
        bytes += static_cast<char>(i * 7919 % 251);
    }
    std::ofstream(folder / "file", std::ios::binary) << bytes;
    EXPECT_EQ(checksumOfFile(folder / "file"), checksumOf(bytes));
    std::ofstream(folder / "empty", std::ios::binary).close();
    EXPECT_EQ(checksumOfFile(folder / "empty"), checksumOf(""));
}

TEST(Checksum, OfAFileThatIsNotThereIsUnreadable)
{
    const ScratchFolder folder;
    try {
        (void)checksumOfFile(folder / "none");
        FAIL() << "it gave a checksum";
    } catch (const StorageFailure& failure) {
        EXPECT_EQ(failure.error().kind, ErrorKind::Unreadable);
        EXPECT_TRUE(failure.error().is(StorageReason::FileUnreadable));
        EXPECT_EQ(failure.error().values, std::vector{(folder / "none").string()});
    }
}

} // namespace
} // namespace plumule
