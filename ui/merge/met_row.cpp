#include "ui/merge/met_row.h"

#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"

#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr int kLeastSideWidth = 260;

QLabel* wrapped(const QString& text, const char* role = "")
{
    auto* made = label(text, role);
    made->setWordWrap(true);
    return made;
}

} // namespace

MetRow::MetRow(const MergeItem& item, const MetWords& words, const QString& copy, QWidget* parent)
    : Card(words.subject(item), "card", parent)
    , m_families(item.families)
    , m_isChosen(item.chosen.has_value())
{
    setObjectName("metRow");
    wrapHeading();
    if (const QString before = words.before(item); !before.isEmpty()) {
        body()->addWidget(wrapped(tr("On both before: %1").arg(before), "muted"));
    }
    auto* state = wrapped(!item.chosen                 ? tr("Not chosen yet")
                          : *item.chosen == Side::Here ? tr("Kept: from here")
                                                       : tr("Kept: from %1").arg(copy),
                          item.chosen ? "good" : "warning");
    state->setObjectName("metState");
    body()->addWidget(state);
    m_beside = new QBoxLayout(QBoxLayout::LeftToRight);
    m_beside->setSpacing(scaled(12));
    m_beside->addWidget(buildSide(item, words, Side::Here, tr("Here")), 1);
    m_beside->addWidget(buildSide(item, words, Side::There, copy), 1);
    body()->addLayout(m_beside);
}

QWidget* MetRow::buildSide(const MergeItem& item, const MetWords& words, Side side,
                           const QString& title)
{
    auto* part = new QFrame;
    setRole(part, item.chosen == side ? "scanned" : "panel");
    auto* column = new QVBoxLayout(part);
    const QString when = words.when(item, side);
    column->addWidget(wrapped(when.isEmpty() ? title : tr("%1, %2").arg(title, when), "muted"));
    auto* lines = wrapped(words.lines(item, side).join(QLatin1Char('\n')));
    lines->setObjectName(side == Side::Here ? "metHere" : "metThere");
    column->addWidget(lines);
    column->addStretch(1);
    const int index = static_cast<int>(side);
    auto* keep = new KeyButton(tr("Keep this"),
                               side == Side::Here ? QStringLiteral("1") : QStringLiteral("2"));
    keep->setObjectName(side == Side::Here ? "keepHere" : "keepThere");
    keep->setAccessibleName(tr("%1: keep what stands in %2").arg(words.subject(item), title));
    keep->setCheckable(true);
    keep->setChecked(item.chosen == side);
    column->addWidget(keep, 0, Qt::AlignLeft);
    connect(keep, &QPushButton::clicked, this, [this, index] { Q_EMIT chosen(index); });
    m_keep[index] = keep;
    return part;
}

void MetRow::begin()
{
    m_keep[m_keep[1]->isChecked() ? 1 : 0]->setFocus();
    bringIntoView(*this);
}

void MetRow::resizeEvent(QResizeEvent* event)
{
    Card::resizeEvent(event);
    const bool isBeside = m_beside->direction() == QBoxLayout::LeftToRight;
    const bool fits = standsBeside(width(), 2 * scaled(kLeastSideWidth), isBeside);
    m_beside->setDirection(fits ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui

#include "moc_met_row.cpp"
