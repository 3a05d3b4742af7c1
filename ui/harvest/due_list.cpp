#include "ui/harvest/due_list.h"

#include "ui/medium/marker.h"
#include "ui/text/text.h"
#include "ui/widget/row_direction.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr std::size_t kShown = 10;

} // namespace

DueList::DueList(QWidget* parent)
    : Card(tr("Still to weigh"), "card", parent)
{
    setObjectName("dueList");
}

void DueList::show(const std::vector<DueRow>& rows, const QString& presentCode,
                   const QString& whenEmpty)
{
    clearLayout(body());
    if (rows.empty()) {
        auto* words = label(whenEmpty, "muted");
        words->setWordWrap(true);
        body()->addWidget(words);
    }
    for (std::size_t i = 0; i < std::min(rows.size(), kShown); ++i) {
        if (i > 0) {
            body()->addWidget(rule());
        }
        body()->addWidget(rowOf(rows[i], QString::fromStdString(rows[i].code) == presentCode));
    }
    if (rows.size() > kShown) {
        body()->addWidget(label(tr("and %1 more").arg(rows.size() - kShown), "muted"));
    }
    body()->addStretch(1);
}

QWidget* DueList::rowOf(const DueRow& row, bool isPresent)
{
    auto* line = new QWidget;
    // In large type the medium stands below the place.
    auto* layout = new QBoxLayout(rowDirection(), line);
    layout->setContentsMargins(0, 0, 0, 0);
    const QString code = QString::fromStdString(row.code);
    auto* take = button(code, "quiet");
    take->setFont(uiFont(1.0, isPresent ? QFont::Bold : QFont::Medium));
    take->setAccessibleName(tr("Weigh %1").arg(code));
    connect(take, &QPushButton::clicked, this, [this, code] { Q_EMIT taken(code); });
    auto* where = new QHBoxLayout;
    where->addWidget(take);
    where->addWidget(label(nameOf(row.spot), "muted"));
    where->addStretch(1);
    auto* what = new QHBoxLayout;
    auto* medium = label(QString::fromStdString(row.medium.name));
    medium->setWordWrap(isTypeLarge());
    what->addWidget(new MarkerDot(row.medium.marker));
    what->addWidget(medium, isTypeLarge() ? 1 : 0);
    if (isPresent) {
        what->addWidget(label(tr("on the scale"), "muted"));
    }
    layout->addLayout(where, 1);
    layout->addLayout(what);
    return line;
}

} // namespace plumule::ui

#include "moc_due_list.cpp"
