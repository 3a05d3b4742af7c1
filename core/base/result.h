#pragma once

#include "core/base/reason.h"

#include <cstdint>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <type_traits>
#include <utility>
#include <vector>

namespace plumule {

// Why something the grower asked for was not done. The wording is ui/text's.
enum class ErrorKind
{
    Missing,       // a needed value was left empty
    Invalid,       // a value is not of its form or out of its range
    Ambiguous,     // a value may be read in two ways, and which is meant is not guessed
    NotFound,      // the thing named does not exist
    Duplicate,     // the name or code is taken already
    Conflict,      // it clashes with how things stand (place taken, tray discarded)
    InUse,         // other rows hang on it, so it is not removed
    ChangedSince,  // undo or redo would overwrite later work
    NothingThere,  // nothing to undo, nothing to redo
    TooFew,        // not enough numbers for the answer
    NotEstimable,  // the data cannot tell these effects apart
    NoConvergence, // an iteration found no answer
    NotAJournal,   // the file is no Plumule journal
    NewerVersion,  // made by a newer Plumule
    Damaged,       // the file or a changeset in it is damaged
    NotWritable,   // the folder or file cannot be written
    AlreadyOpen,   // another Plumule holds the journal
    ReadOnly,      // the journal was opened only to read
    DiskFull,      // nothing was lost, nothing was written
    FileGone,      // the journal's file was removed or replaced while open
    Unreadable,    // a file cannot be opened or read
    Cancelled,     // the grower stopped it
};

// Where it went wrong: a row of a table of the journal, or of a file that was read.
struct RowAt
{
    std::string table;       // "watering", or the file's name
    std::int64_t number = 0; // the row's id, or the line counted from 1; 0: not known

    bool operator==(const RowAt&) const = default;
};

// `values` are what is at fault and what stands in its way, in the order that the reason's
// enumerator says: names and codes as the grower wrote them, numbers in figures. None of it is a
// sentence.
struct Error
{
    ErrorKind kind = ErrorKind::Invalid;
    Reason reason = {};
    std::vector<std::string> values = {};
    std::optional<RowAt> row = {};

    template <ReasonEnum R>
    [[nodiscard]] bool is(R expected) const
    {
        return reason.is(expected);
    }
    bool operator==(const Error&) const = default;
};

template <class T>
using Result = tl::expected<T, Error>;

// Success without a value.
using Done = Result<void>;

[[nodiscard]] inline std::string valueText(std::string value)
{
    return value;
}
template <class T>
requires std::is_integral_v<T>
[[nodiscard]] std::string valueText(T value)
{
    return std::to_string(value);
}

// fail(ErrorKind::Conflict, TrayReason::PlaceTaken, "B2", 4, "RD031")
template <ReasonEnum R, class... Values>
[[nodiscard]] tl::unexpected<Error> fail(ErrorKind kind, R reason, Values&&... values)
{
    return tl::unexpected<Error>(
        Error{kind, reason, {valueText(std::forward<Values>(values))...}, std::nullopt});
}

// What another function refused, handed on as one's own refusal.
[[nodiscard]] inline tl::unexpected<Error> passOn(Error refused)
{
    return tl::unexpected<Error>(std::move(refused));
}
template <class T>
[[nodiscard]] tl::unexpected<Error> passOn(const Result<T>& refused)
{
    return tl::unexpected<Error>(refused.error());
}

} // namespace plumule
