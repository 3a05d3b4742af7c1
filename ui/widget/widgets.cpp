#include "ui/widget/widgets.h"

#include "ui/widget/flow_layout.h"
#include "ui/widget/measured_label.h"
#include "ui/widget/theme.h"

#include <QButtonGroup>
#include <QFormLayout>
#include <QLineEdit>
#include <QScrollArea>
#include <QStyle>
#include <QTimer>
#include <QVBoxLayout>

namespace plumule::ui {

QLabel* label(const QString& text, const char* role)
{
    auto* widget = new MeasuredLabel(text);
    if (*role != '\0') {
        widget->setProperty("role", role);
    }
    return widget;
}

QPushButton* button(const QString& text, const char* role)
{
    auto* widget = new QPushButton(text);
    widget->setAutoDefault(false);
    if (*role != '\0') {
        widget->setProperty("role", role);
    }
    return widget;
}

void setRole(QWidget* widget, const char* role)
{
    widget->setProperty("role", role);
    widget->style()->unpolish(widget);
    widget->style()->polish(widget);
    widget->update();
}

void markWrong(QLineEdit& field, bool isWrong)
{
    if (field.property("wrong").toBool() != isWrong) {
        field.setProperty("wrong", isWrong);
        field.style()->unpolish(&field);
        field.style()->polish(&field);
    }
}

QFrame* rule()
{
    auto* line = new QFrame;
    line->setProperty("role", "rule");
    return line;
}

QFormLayout* fieldForm()
{
    auto* form = new QFormLayout;
    form->setContentsMargins(0, 0, 0, 0);
    form->setHorizontalSpacing(scaled(16));
    form->setVerticalSpacing(scaled(9));
    form->setLabelAlignment(Qt::AlignLeft | Qt::AlignVCenter);
    form->setFieldGrowthPolicy(QFormLayout::ExpandingFieldsGrow);
    form->setRowWrapPolicy(QFormLayout::WrapLongRows);
    return form;
}

Card::Card(const QString& heading, const char* role, QWidget* parent)
    : QFrame(parent)
{
    setProperty("role", role);
    auto* outer = new QVBoxLayout(this);
    outer->setContentsMargins(scaled(18), scaled(14), scaled(18), scaled(14));
    outer->setSpacing(scaled(8));
    m_headingRow = new QHBoxLayout;
    m_headingRow->setSpacing(scaled(8));
    m_heading = label(heading, "heading");
    m_headingRow->addWidget(m_heading);
    m_headingRow->addStretch(1);
    m_body = new QVBoxLayout;
    m_body->setSpacing(scaled(6));
    outer->addLayout(m_headingRow);
    outer->addLayout(m_body, 1);
    // Once it stands in the card: shown before that it would be a window of its own.
    m_heading->setVisible(!heading.isEmpty());
    if (isTypeLarge()) {
        wrapHeading();
    }
}

void Card::setHeading(const QString& heading)
{
    m_heading->setText(heading);
    m_heading->setVisible(!heading.isEmpty());
}

void Card::wrapHeading()
{
    m_heading->setWordWrap(true);
    m_headingRow->setStretch(0, 100);
}

PageHead::PageHead(const QString& title, QWidget* parent)
    : QWidget(parent)
{
    m_row = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_row->setContentsMargins(0, 0, 0, 0);
    m_row->setSizeConstraint(QLayout::SetNoConstraint);
    auto* words = new QVBoxLayout;
    words->setSpacing(scaled(2));
    m_title = label(title, "title");
    m_title->setObjectName("pageTitle");
    m_title->setWordWrap(isTypeLarge());
    m_subtitle = label(QString(), "subtitle");
    m_subtitle->setObjectName("pageSubtitle");
    m_subtitle->setWordWrap(true);
    words->addWidget(m_title);
    words->addWidget(m_subtitle);
    m_controls = new FlowLayout;
    m_subtitle->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    m_row->addLayout(words, 1);
    m_row->addLayout(m_controls);
    m_row->setAlignment(m_controls, Qt::AlignBottom);
}

QSize PageHead::minimumSizeHint() const
{
    return {std::max(m_title->minimumSizeHint().width(), m_controls->minimumSize().width()),
            QWidget::minimumSizeHint().height()};
}

void PageHead::resizeEvent(QResizeEvent* event)
{
    QWidget::resizeEvent(event);
    const int needed = m_controls->sizeHint().width() + scaled(240);
    const bool isNarrow = width() < needed;
    m_row->setDirection(isNarrow ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_row->setSpacing(isNarrow ? scaled(10) : -1);
    m_row->setAlignment(m_controls, isNarrow ? Qt::Alignment() : Qt::AlignBottom);
}

void PageHead::setTitle(const QString& title)
{
    m_title->setText(title);
}

void PageHead::setSubtitle(const QString& subtitle)
{
    m_subtitle->setText(subtitle);
}

QString PageHead::subtitle() const
{
    return m_subtitle->text();
}

void PageHead::addControl(QWidget* control)
{
    m_controls->addWidget(control);
}

Segmented::Segmented(const QStringList& names, QWidget* parent)
    : QWidget(parent)
    , m_group(new QButtonGroup(this))
{
    // In large type they may need more lines than one.
    QLayout* row = isTypeLarge() ? static_cast<QLayout*>(new FlowLayout(this))
                                 : static_cast<QLayout*>(new QHBoxLayout(this));
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(isTypeLarge() ? scaled(2) : 0);
    for (qsizetype i = 0; i < names.size(); ++i) {
        auto* part = button(names[i], "segment");
        part->setCheckable(true);
        const bool isFirst = i == 0;
        const bool isLast = i == names.size() - 1;
        part->setProperty("end", isTypeLarge() || (isFirst && isLast) ? "only"
                                 : isFirst                            ? "first"
                                 : isLast                             ? "last"
                                                                      : "middle");
        m_group->addButton(part, static_cast<int>(i));
        row->addWidget(part);
    }
    m_group->setExclusive(true);
    choose(0);
    connect(m_group, &QButtonGroup::idClicked, this, &Segmented::chosenByHand);
}

int Segmented::chosen() const
{
    return m_group->checkedId();
}

void Segmented::choose(int index)
{
    if (auto* part = m_group->button(index)) {
        part->setChecked(true);
    } else if (auto* chosenNow = m_group->checkedButton()) {
        m_group->setExclusive(false);
        chosenNow->setChecked(false);
        m_group->setExclusive(true);
    }
}

QPushButton* Segmented::segment(int index) const
{
    return qobject_cast<QPushButton*>(m_group->button(index));
}

QScrollArea* scrolling(QVBoxLayout*& inner)
{
    auto* area = new QScrollArea;
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAsNeeded);
    area->setFocusPolicy(Qt::NoFocus);
    area->viewport()->setAutoFillBackground(false);
    auto* content = new QWidget;
    content->setObjectName("scrolled");
    inner = new QVBoxLayout(content);
    inner->setContentsMargins(0, 0, scaled(4), 0);
    inner->setSpacing(scaled(14));
    area->setWidget(content);
    return area;
}

namespace {

void scrollTo(QWidget& part)
{
    for (QWidget* each = part.parentWidget(); each != nullptr; each = each->parentWidget()) {
        if (auto* area = qobject_cast<QScrollArea*>(each); area && part.isVisible()) {
            area->ensureWidgetVisible(&part, 0, scaled(60));
        }
    }
}

} // namespace

// What was shown just now is laid out in one turn, and what it stands in grows in the next.
void bringIntoView(QWidget& part)
{
    QTimer::singleShot(0, &part,
                       [&part] { QTimer::singleShot(0, &part, [&part] { scrollTo(part); }); });
}

bool standsBeside(int width, int needed, bool isBeside)
{
    return width >= (isBeside ? needed : needed + scaled(24));
}

void clearLayout(QLayout* layout)
{
    while (QLayoutItem* item = layout->takeAt(0)) {
        if (QWidget* widget = item->widget()) {
            widget->hide();
            widget->deleteLater();
        } else if (QLayout* nested = item->layout()) {
            clearLayout(nested);
        }
        delete item;
    }
}

} // namespace plumule::ui

#include "moc_widgets.cpp"
