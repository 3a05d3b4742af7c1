#pragma once

#include <QString>

#include <optional>
#include <vector>

namespace plumule::ui {

// Light modules around a QR code that a reader needs (ISO/IEC 18004).
inline constexpr int kQuietModules = 4;

// The modules of a QR code, without its quiet zone.
struct LabelCode
{
    int side = 0;
    std::vector<bool> dark; // row by row

    [[nodiscard]] bool isDark(int row, int column) const
    {
        return dark[static_cast<std::size_t>(row) * static_cast<std::size_t>(side) +
                    static_cast<std::size_t>(column)];
    }
    [[nodiscard]] int sideWithQuiet() const { return side + 2 * kQuietModules; }
};

// The text as a QR code that bears a loss of 15 % (level M). None for no text or too long a one.
[[nodiscard]] std::optional<LabelCode> labelCode(const QString& text);

} // namespace plumule::ui
