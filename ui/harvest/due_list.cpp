#include "ui/harvest/due_list.h"

#include "ui/medium/marker.h"
#include "ui/text/text.h"
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
    auto* layout = new QHBoxLayout(line);
    layout->setContentsMargins(0, 0, 0, 0);
    const QString code = QString::fromStdString(row.code);
    auto* take = button(code, "quiet");
    take->setFont(uiFont(1.0, isPresent ? QFont::Bold : QFont::Medium));
    take->setAccessibleName(tr("Weigh %1").arg(code));
    connect(take, &QPushButton::clicked, this, [this, code] { Q_EMIT taken(code); });
    layout->addWidget(take);
    layout->addWidget(label(nameOf(row.spot), "muted"));
    layout->addStretch(1);
    layout->addWidget(new MarkerDot(row.medium.marker));
    layout->addWidget(label(QString::fromStdString(row.medium.name)));
    if (isPresent) {
        layout->addWidget(label(tr("on the scale"), "muted"));
    }
    return line;
}

} // namespace plumule::ui

#include "moc_due_list.cpp"
