#pragma once

#include "core/journal/journal.h"
#include "ui/text/text.h"

#include <QStringList>

namespace plumule::ui {

// What taking an act back comes to, a line each: "Goes: 4 waterings.", "Comes back: 1 weight.",
// "Changes: 1 tray, 1 stage."
[[nodiscard]] QStringList effectWords(const std::vector<RowEffect>& effects);

// A value that would change: "net", "259.5 g", "295.5 g".
struct ValueChange
{
    QString what;
    QString now;
    QString after;
};
// Of those that a grower wrote or weighed, in the order of the rows, at most `most`.
[[nodiscard]] std::vector<ValueChange> valueChanges(const std::vector<RowEffect>& effects,
                                                    const UnitText& units, std::size_t most);

// What one looks for among acts.
enum class ActKind
{
    All,
    Trays,
    Water,
    Weights,
    Trials,
    Orders,
    SetUp
};
// By the intention's key; one of a newer program's is of All alone.
[[nodiscard]] bool isOfKind(const HistoryEntry& act, ActKind kind);

} // namespace plumule::ui
