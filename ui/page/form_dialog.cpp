#include "ui/page/form_dialog.h"

#include "ui/page/ask.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QKeyEvent>
#include <QScreen>
#include <QScrollArea>
#include <QScrollBar>
#include <QVBoxLayout>

#include <algorithm>

namespace plumule::ui {
namespace {

// What a window's frame and the desktop's bars may take of the screen.
constexpr QSize kAroundDialog{40, 80};

} // namespace

FormDialog::FormDialog(Ask& ask, const char* name, const QString& title, QWidget* parent)
    : QDialog(parent)
    , m_ask(ask)
{
    setObjectName(QString::fromLatin1(name));
    setWindowTitle(title);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(24), scaled(20), scaled(24), scaled(20));
    column->setSpacing(scaled(12));
    auto* head = label(title, "title");
    head->setWordWrap(true);
    column->addWidget(head);
    QVBoxLayout* inner = nullptr;
    m_area = scrolling(inner);
    column->addWidget(m_area, 1);
    m_panel = new FormPanel;
    m_body = new QVBoxLayout(m_panel);
    m_body->setContentsMargins(0, 0, 0, 0);
    m_body->setSpacing(scaled(10));
    inner->addWidget(m_panel, 1);
    m_refusal = label(QString(), "warning");
    m_refusal->setObjectName("refusal");
    m_refusal->setWordWrap(true);
    m_refusal->hide();
    column->addWidget(m_refusal);
    auto* row = new QHBoxLayout;
    m_left = new QHBoxLayout;
    m_right = new QHBoxLayout;
    row->addLayout(m_left);
    row->addStretch(1);
    row->addLayout(m_right);
    column->addLayout(row);
}

QPushButton* FormDialog::made(const QString& text, const char* name, const char* role)
{
    auto* one = button(text, role);
    one->setObjectName(QString::fromLatin1(name));
    one->setAutoDefault(true); // else Enter on Cancel would press what saves
    if (QLatin1String(role) == QLatin1String("primary")) {
        one->setDefault(true);
        connect(m_panel, &FormPanel::entered, one, &QPushButton::click);
    }
    return one;
}

QPushButton* FormDialog::addLeftButton(const QString& text, const char* name, const char* role)
{
    auto* one = made(text, name, role);
    m_left->addWidget(one);
    return one;
}

QPushButton* FormDialog::addButton(const QString& text, const char* name, const char* role)
{
    auto* one = made(text, name, role);
    m_right->addWidget(one);
    return one;
}

void FormDialog::addCancel()
{
    connect(addButton(tr("Cancel"), "cancel"), &QPushButton::clicked, this, &FormDialog::reject);
}

void FormDialog::refuse(const QString& why)
{
    m_refusal->setText(why);
    m_refusal->setVisible(!why.isEmpty());
}

void FormDialog::reject()
{
    if (!m_asks || !isVisible() || !m_panel->isChanged()) {
        QDialog::reject();
        return;
    }
    m_ask.confirm(this, tr("Not saved"),
                  tr("What you typed here is not saved. Leave it all the same?"),
                  tr("Leave without saving"), [this] { QDialog::reject(); });
}

void FormDialog::keyPressEvent(QKeyEvent* event)
{
    const bool isNext = event->matches(QKeySequence::MoveToNextPage);
    if (isNext || event->matches(QKeySequence::MoveToPreviousPage)) {
        m_area->verticalScrollBar()->triggerAction(isNext ? QAbstractSlider::SliderPageStepAdd
                                                          : QAbstractSlider::SliderPageStepSub);
    } else {
        QDialog::keyPressEvent(event);
    }
}

void FormDialog::showEvent(QShowEvent* event)
{
    // By now the fields are filled.
    m_panel->settle();
    const QSize most = screen()->availableSize() - kAroundDialog;
    const QSize around = sizeHint() - m_area->sizeHint();
    const int barWide = m_area->verticalScrollBar()->sizeHint().width();
    const int wide =
        std::min(most.width(), std::max(m_wish.width(), m_panel->sizeHint().width() + barWide +
                                                            std::max(0, around.width())));
    const QMargins margins = layout()->contentsMargins();
    const int inner = wide - margins.left() - margins.right() - barWide;
    const int panelHigh = m_panel->hasHeightForWidth() ? m_panel->heightForWidth(inner)
                                                       : m_panel->sizeHint().height();
    resize(wide, std::min(most.height(),
                          std::max(m_wish.height(), panelHigh + around.height() + scaled(8))));
    QDialog::showEvent(event);
}

} // namespace plumule::ui

#include "moc_form_dialog.cpp"
