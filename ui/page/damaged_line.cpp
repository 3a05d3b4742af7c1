#include "ui/page/damaged_line.h"

#include "ui/widget/widgets.h"

#include <QCoreApplication>
#include <QStringList>

namespace plumule::ui {
namespace {

class DamagedTr
{
    Q_DECLARE_TR_FUNCTIONS(Damaged)
};

} // namespace

QString damagedWords(const std::vector<DamagedTray>& trays)
{
    if (trays.empty()) {
        return {};
    }
    QStringList names;
    for (const DamagedTray& each : trays) {
        names << (each.code.empty() ? DamagedTr::tr("entry %1").arg(each.tray.value)
                                    : QString::fromStdString(each.code));
    }
    return DamagedTr::tr("%n tray(s) can't be read and stand in no list: %1. Open the latest "
                         "backup, or save what can be read: plumule rescue OLD NEW.",
                         nullptr, static_cast<int>(trays.size()))
        .arg(names.join(", "));
}

QLabel* damagedLine()
{
    QLabel* line = label(QString(), "strong");
    line->setObjectName("damaged");
    line->setWordWrap(true);
    line->hide();
    return line;
}

} // namespace plumule::ui
