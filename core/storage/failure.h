#pragma once

#include "core/base/result.h"

#include <stdexcept>
#include <string>

namespace plumule {

// What the machine broke. Thrown inside core/storage and the repositories, turned into an Error
// once, at the journal's door.
class StorageFailure : public std::runtime_error
{
public:
    StorageFailure(ErrorKind kind, const std::string& subject, const std::string& detail)
        : std::runtime_error(subject + ": " + detail)
        , m_error{kind, subject, detail}
    {}
    [[nodiscard]] const Error& error() const { return m_error; }

private:
    Error m_error;
};

} // namespace plumule
