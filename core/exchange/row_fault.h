#pragma once

#include "core/base/result.h"
#include "core/exchange/exchange_reason.h"

namespace plumule {

// What is wrong in a line of a table; `file` is empty where only one is read.
template <class... Values>
[[nodiscard]] tl::unexpected<Error> faultAt(std::string file, int line, ErrorKind kind,
                                            ExchangeReason reason, Values&&... values)
{
    tl::unexpected<Error> fault = fail(kind, reason, std::forward<Values>(values)...);
    fault.value().row = RowAt{std::move(file), line};
    return fault;
}

} // namespace plumule
