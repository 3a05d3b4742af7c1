#include "ui/page/message_bar.h"

#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QLabel>
#include <QPushButton>

namespace plumule::ui {

MessageBar::MessageBar(QWidget* parent)
    : QFrame(parent)
{
    setObjectName("messageBar");
    setProperty("role", "card");
    auto* layout = new QHBoxLayout(this);
    layout->setContentsMargins(scaled(16), scaled(8), scaled(10), scaled(8));
    m_text = label(QString(), "strong");
    m_text->setObjectName("messageText");
    m_text->setWordWrap(true);
    m_action = button(QString(), "quiet");
    m_action->setObjectName("messageAction");
    m_action->setFocusPolicy(Qt::NoFocus);
    auto* close = button(tr("Close"), "quiet");
    close->setFocusPolicy(Qt::NoFocus);
    layout->addWidget(m_text, 1);
    layout->addWidget(m_action);
    layout->addWidget(close);
    connect(m_action, &QPushButton::clicked, this, [this] {
        // The action may tell something itself, so it is taken out first.
        const auto run = std::exchange(m_run, nullptr);
        clear();
        if (run) {
            run();
        }
    });
    connect(close, &QPushButton::clicked, this, &MessageBar::clear);
    clear();
}

void MessageBar::tell(const QString& sentence)
{
    tell(sentence, QString(), nullptr);
}

void MessageBar::tell(const QString& sentence, const QString& actionName,
                      std::function<void()> action)
{
    show(sentence, false);
    m_run = std::move(action);
    m_action->setText(actionName);
    m_action->setVisible(static_cast<bool>(m_run));
}

void MessageBar::refuse(const QString& sentence)
{
    show(sentence, true);
    m_run = nullptr;
    m_action->hide();
}

void MessageBar::clear()
{
    m_text->clear();
    m_run = nullptr;
    hide();
}

QString MessageBar::text() const
{
    return m_text->text();
}

void MessageBar::show(const QString& sentence, bool isRefusal)
{
    m_isRefusal = isRefusal;
    setRole(m_text, isRefusal ? "warning" : "strong");
    m_text->setText(sentence);
    setVisible(true);
}

} // namespace plumule::ui

#include "moc_message_bar.cpp"
