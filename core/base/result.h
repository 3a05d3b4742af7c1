#pragma once

#include <string>
#include <tl/expected.hpp>
#include <utility>

namespace plumule {

// Why something the grower asked for was not done. The wording is ui/text's.
enum class ErrorKind
{
    Missing,       // a needed value was left empty
    Invalid,       // a value is not of its form or out of its range
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

// `subject` names what is wrong in a stable way ("tray.code", "row 12: seed_g"); `detail` holds the
// value at fault. Neither is a sentence.
struct Error
{
    ErrorKind kind = ErrorKind::Invalid;
    std::string subject;
    std::string detail;

    bool operator==(const Error&) const = default;
};

template <class T>
using Result = tl::expected<T, Error>;

// Success without a value.
using Done = Result<void>;

[[nodiscard]] inline tl::unexpected<Error> fail(ErrorKind kind, std::string subject,
                                                std::string detail = {})
{
    return tl::unexpected<Error>(Error{kind, std::move(subject), std::move(detail)});
}

} // namespace plumule
