#include "core/storage/changeset_bytes.h"

#include <algorithm>
#include <array>
#include <new>
#include <sqlite3.h>
#include <utility>
#include <zlib.h>

namespace plumule {
namespace {

constexpr char kPacked = 'P'; // what SQLite writes begins with 'T'
constexpr std::size_t kLongestAsItIs = std::size_t{1} << 20;
constexpr int kFast = 1; // zlib's level: it is waited for

// zlib reads through a pointer that is not const, and writes nothing there.
Bytef* readableBy(const char* bytes)
{
    return reinterpret_cast<Bytef*>(const_cast<char*>(bytes));
}

} // namespace

bool isPackedChangeset(std::string_view stored)
{
    return stored.starts_with(kPacked);
}

ChangesetPacker::ChangesetPacker() = default;

ChangesetPacker::~ChangesetPacker()
{
    if (m_packing) {
        deflateEnd(m_packing.get());
    }
}

void ChangesetPacker::add(std::string_view piece)
{
    if (m_packing) {
        pack(piece, Z_NO_FLUSH);
        return;
    }
    m_bytes += piece;
    if (m_bytes.size() <= kLongestAsItIs) {
        return;
    }
    auto packing = std::make_unique<z_stream>();
    if (deflateInit(packing.get(), kFast) != Z_OK) {
        throw std::bad_alloc();
    }
    m_packing = std::move(packing);
    const std::string asItCame = std::exchange(m_bytes, std::string(1, kPacked));
    pack(asItCame, Z_NO_FLUSH);
}

std::string ChangesetPacker::stored()
{
    if (m_packing) {
        pack({}, Z_FINISH);
    }
    return std::move(m_bytes);
}

void ChangesetPacker::pack(std::string_view piece, int flush)
{
    std::array<char, 1 << 16> packed;
    m_packing->next_in = readableBy(piece.data());
    m_packing->avail_in = static_cast<uInt>(piece.size());
    do {
        m_packing->next_out = reinterpret_cast<Bytef*>(packed.data());
        m_packing->avail_out = static_cast<uInt>(packed.size());
        deflate(m_packing.get(), flush);
        m_bytes.append(packed.data(), packed.size() - m_packing->avail_out);
    } while (m_packing->avail_out == 0);
}

ChangesetReader::ChangesetReader(std::string_view stored, std::size_t most)
    : m_left(stored)
    , m_mayGive(most)
{
    if (!isPackedChangeset(stored)) {
        return;
    }
    m_unpacking = std::make_unique<z_stream>();
    m_unpacking->next_in = readableBy(stored.data() + 1);
    m_unpacking->avail_in = static_cast<uInt>(stored.size() - 1);
    m_left = {};
    if (inflateInit(m_unpacking.get()) != Z_OK) {
        throw std::bad_alloc();
    }
}

ChangesetReader::~ChangesetReader()
{
    if (m_unpacking) {
        inflateEnd(m_unpacking.get());
    }
}

std::size_t ChangesetReader::read(char* into, std::size_t most)
{
    if (m_unpacking) {
        return unpack(into, most);
    }
    const std::size_t given = m_left.copy(into, most);
    m_left.remove_prefix(given);
    return given;
}

std::size_t ChangesetReader::unpack(char* into, std::size_t most)
{
    m_unpacking->next_out = reinterpret_cast<Bytef*>(into);
    m_unpacking->avail_out = static_cast<uInt>(most);
    const int code = inflate(m_unpacking.get(), Z_NO_FLUSH);
    const std::size_t given = most - m_unpacking->avail_out;
    // Behind the end nothing may follow; without an end there must be more.
    const bool isAtEnd = code == Z_STREAM_END;
    m_isFaulty =
        given > m_mayGive || (isAtEnd ? m_unpacking->avail_in > 0 : code != Z_OK || given == 0);
    m_mayGive -= std::min(given, m_mayGive);
    if (isAtEnd || m_isFaulty) {
        inflateEnd(m_unpacking.get());
        m_unpacking.reset();
    }
    return m_isFaulty ? 0 : given;
}

int PieceTaker::take(void* taker, const void* bytes, int size)
{
    auto* to = static_cast<PieceTaker*>(taker);
    try {
        to->m_onPiece({static_cast<const char*>(bytes), static_cast<std::size_t>(size)});
        return SQLITE_OK;
    } catch (...) {
        to->m_thrown = std::current_exception();
        return SQLITE_ABORT;
    }
}

void PieceTaker::rethrow() const
{
    if (m_thrown) {
        std::rethrow_exception(m_thrown);
    }
}

} // namespace plumule
