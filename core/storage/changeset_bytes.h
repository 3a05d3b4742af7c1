#pragma once

#include <exception>
#include <functional>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

struct z_stream_s;

namespace plumule {

// How a changeset is stored: as SQLite's session extension writes it, or packed, a 'P' and a zlib
// stream (RFC 1950), where it is long. A table of 100,000 trays comes to 49 MB and packs into 7.

// Puts a changeset that comes piece by piece into the form in which it is stored.
class ChangesetPacker
{
public:
    ChangesetPacker();
    ~ChangesetPacker();
    ChangesetPacker(const ChangesetPacker&) = delete;
    ChangesetPacker& operator=(const ChangesetPacker&) = delete;

    void add(std::string_view piece);
    // When all was added; once.
    [[nodiscard]] std::string stored();

private:
    void pack(std::string_view piece, int flush);

    std::string m_bytes;                   // as they came, or what is packed of them
    std::unique_ptr<z_stream_s> m_packing; // none while it is short
};

// Gives a stored changeset back as SQLite wrote it, piece by piece. The bytes may come from
// anywhere: never reads beyond them, and never gives more than `most`.
class ChangesetReader
{
public:
    static constexpr std::size_t kMost = 1'000'000'000; // SQLite's longest BLOB, as shipped

    explicit ChangesetReader(std::string_view stored, std::size_t most = kMost);
    ~ChangesetReader();
    ChangesetReader(const ChangesetReader&) = delete;
    ChangesetReader& operator=(const ChangesetReader&) = delete;

    // Up to that many of the next bytes; 0 at the end, and from a fault on.
    std::size_t read(char* into, std::size_t most);
    // Whether the packed bytes are none, are cut short, or come to too much.
    [[nodiscard]] bool isFaulty() const { return m_isFaulty; }

private:
    std::size_t unpack(char* into, std::size_t most);

    std::string_view m_left;                 // of bytes that are not packed
    std::unique_ptr<z_stream_s> m_unpacking; // none where they are not, and at their end
    std::size_t m_mayGive;                   // that many more, once unpacked
    bool m_isFaulty = false;
};

[[nodiscard]] bool isPackedChangeset(std::string_view stored);

// To be handed a changeset by SQLite piece by piece: take() with this as its context. What a piece
// throws waits until SQLite, which knows no exceptions, has returned.
class PieceTaker
{
public:
    explicit PieceTaker(std::function<void(std::string_view)> onPiece)
        : m_onPiece(std::move(onPiece))
    {}

    static int take(void* taker, const void* bytes, int size);
    // Throws what a piece threw.
    void rethrow() const;

private:
    std::function<void(std::string_view)> m_onPiece;
    std::exception_ptr m_thrown;
};

} // namespace plumule
