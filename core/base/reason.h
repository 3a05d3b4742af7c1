#pragma once

#include <optional>
#include <string_view>
#include <type_traits>

namespace plumule {

// An enum class that tells the ways in which one concept refuses ("TrayReason"). It stands in the
// concept's own room and names its family beside it:
//     constexpr std::string_view familyOf(TrayReason) { return "tray"; }
template <class R>
concept ReasonEnum =
    std::is_enum_v<R> && std::is_convertible_v<decltype(familyOf(R{})), std::string_view>;

// One such reason, whichever concept's it is.
class Reason
{
public:
    constexpr Reason() = default;
    template <ReasonEnum R>
    constexpr Reason(R reason)
        : m_family(familyOf(reason))
        , m_code(static_cast<int>(reason))
    {}

    template <ReasonEnum R>
    [[nodiscard]] constexpr bool is(R reason) const
    {
        return *this == Reason(reason);
    }
    // As the enumerator that it was, when it is of that family.
    template <ReasonEnum R>
    [[nodiscard]] constexpr std::optional<R> as() const
    {
        return m_family == familyOf(R{}) ? std::optional(static_cast<R>(m_code)) : std::nullopt;
    }
    [[nodiscard]] constexpr std::string_view family() const { return m_family; }
    [[nodiscard]] constexpr int code() const { return m_code; }

    bool operator==(const Reason&) const = default;

private:
    std::string_view m_family;
    int m_code = 0;
};

} // namespace plumule
