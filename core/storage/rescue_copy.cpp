#include "core/storage/rescue_copy.h"

#include "core/storage/journal_file.h"
#include "core/storage/migrations.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <fcntl.h>
#include <fstream>
#include <sqlite3.h>
#include <unistd.h>

namespace plumule {
namespace {

namespace fs = std::filesystem;

constexpr std::uint32_t kPageBytes = 4096; // SQLite's own choice, which no journal changes

// A handle that is closed.
class Handle
{
public:
    Handle(const fs::path& path, int flags)
        : m_handle(::open(path.c_str(), flags | O_CLOEXEC, 0600))
    {}
    ~Handle()
    {
        if (m_handle >= 0) {
            ::close(m_handle);
        }
    }
    Handle(const Handle&) = delete;
    Handle& operator=(const Handle&) = delete;

    [[nodiscard]] int get() const { return m_handle; }

private:
    int m_handle;
};

// Page by page: one that the disk doesn't give back stays a hole, which reads as zeros.
Done copyReadable(const fs::path& from, const fs::path& to)
{
    const Handle source(from, O_RDONLY);
    const Handle target(to, O_WRONLY | O_CREAT | O_EXCL);
    if (source.get() < 0) {
        return fail(ErrorKind::Unreadable, StorageReason::FileUnreadable, from.string());
    }
    if (target.get() < 0) {
        return fail(ErrorKind::NotWritable, StorageReason::NotMade, to.string());
    }
    const off_t size = ::lseek(source.get(), 0, SEEK_END);
    if (size <= 0 || ::ftruncate(target.get(), size) != 0) {
        return size <= 0 ? fail(ErrorKind::Unreadable, StorageReason::FileUnreadable, from.string())
                         : fail(ErrorKind::DiskFull, StorageReason::NotMade, to.string());
    }
    std::array<char, kPageBytes> page{};
    for (off_t at = 0; at < size; at += kPageBytes) {
        const ssize_t got = ::pread(source.get(), page.data(), page.size(), at);
        if (got > 0 &&
            ::pwrite(target.get(), page.data(), static_cast<std::size_t>(got), at) != got) {
            return fail(ErrorKind::DiskFull, StorageReason::NotMade, to.string());
        }
    }
    return {};
}

// As many as there were, with holes for those that were cut off: SQLite takes no table that begins
// beyond the end. At least what a new journal has.
std::uint32_t pagesOf(const fs::path& file, std::uint32_t there)
{
    constexpr std::uint32_t kOfANewJournal = 256;
    constexpr std::uint32_t kMostCutOff = 1'000'000;
    std::array<unsigned char, 32> head{};
    std::ifstream(file, std::ios::binary)
        .read(reinterpret_cast<char*>(head.data()), static_cast<std::streamsize>(head.size()));
    std::uint32_t said = 0;
    for (std::size_t i = 28; i < 32; ++i) {
        said = said << 8 | head[i];
    }
    const bool isPlausible = said > there && said - there < kMostCutOff;
    return std::max(isPlausible ? said : there, kOfANewJournal);
}

void put(std::string& head, std::size_t at, std::uint32_t value)
{
    for (std::size_t i = 0; i < 4; ++i) {
        head[at + i] = static_cast<char>(value >> (24 - 8 * i));
    }
}

} // namespace

RescueCopy::RescueCopy(fs::path folder)
    : m_folder(std::move(folder))
{}

RescueCopy::RescueCopy(RescueCopy&& other) noexcept
    : m_folder(std::exchange(other.m_folder, {}))
{}

RescueCopy::~RescueCopy()
{
    if (!m_folder.empty()) {
        std::error_code ignored;
        fs::remove_all(m_folder, ignored);
    }
}

Result<RescueCopy> RescueCopy::make(const fs::path& old, const fs::path& beside)
{
    std::string folder = (fs::absolute(beside).parent_path() / ".plumule-rescue-XXXXXX").string();
    if (::mkdtemp(folder.data()) == nullptr) {
        return fail(errno == ENOSPC ? ErrorKind::DiskFull : ErrorKind::NotWritable,
                    StorageReason::NotMade, beside.string());
    }
    RescueCopy copy{fs::path(folder)};
    if (Done copied = copyReadable(old, copy.file()); !copied) {
        return passOn(copied);
    }
    std::error_code ignored;
    for (const char* ending : {"-wal", "-journal"}) {
        const fs::path log = old.string() + ending;
        if (fs::is_regular_file(log, ignored) && fs::file_size(log, ignored) > 0) {
            if (Done copied = copyReadable(log, copy.file().string() + ending); !copied) {
                return passOn(copied);
            }
        }
    }
    return copy;
}

bool RescueCopy::hasLog() const
{
    std::error_code ignored;
    return fs::exists(file().string() + "-wal", ignored) ||
           fs::exists(file().string() + "-journal", ignored);
}

void RescueCopy::dropLog() const
{
    std::error_code ignored;
    for (const char* ending : {"-wal", "-shm", "-journal"}) {
        fs::remove(file().string() + ending, ignored);
    }
}

void RescueCopy::rebuildHead() const
{
    std::error_code ignored;
    const std::uintmax_t bytes = fs::file_size(file(), ignored);
    const std::uint32_t pages =
        pagesOf(file(), static_cast<std::uint32_t>((bytes + kPageBytes - 1) / kPageBytes));
    fs::resize_file(file(), std::uintmax_t{pages} * kPageBytes, ignored);
    std::string head(100, '\0');
    head.replace(0, 16, std::string("SQLite format 3\0", 16));
    head[16] = static_cast<char>(kPageBytes >> 8);
    head[18] = head[19] = 2; // a write-ahead log
    head[21] = 64;
    head[22] = head[23] = 32;
    constexpr std::uint32_t kChange = 1;
    put(head, 24, kChange);
    put(head, 28, pages);
    put(head, 40, kChange); // the schema's
    put(head, 44, 4);       // the newest format of a schema
    put(head, 56, 1);       // UTF-8
    put(head, 60, static_cast<std::uint32_t>(migrations().back().version));
    put(head, 68, static_cast<std::uint32_t>(kApplicationId));
    put(head, 92, kChange);
    put(head, 96, SQLITE_VERSION_NUMBER);
    std::fstream written(file(), std::ios::in | std::ios::out | std::ios::binary);
    written.write(head.data(), static_cast<std::streamsize>(head.size()));
}

} // namespace plumule
