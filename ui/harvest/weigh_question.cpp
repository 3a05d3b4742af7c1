#include "ui/harvest/weigh_question.h"

#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/lone_key.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QAccessible>
#include <QKeyEvent>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

constexpr qint64 kNoKeyFor = 400; // ms

bool isEnter(int key)
{
    return key == Qt::Key_Return || key == Qt::Key_Enter;
}

} // namespace

WeighQuestion::WeighQuestion(QWidget* parent)
    : QFrame(parent)
    , m_letter(new LoneKey(this))
{
    setObjectName("question");
    setProperty("role", "caution");
    setFocusPolicy(Qt::StrongFocus);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(16), scaled(14), scaled(16), scaled(14));
    column->setSpacing(scaled(6));
    m_title = label(QString(), "code");
    m_title->setObjectName("questionTitle");
    m_words = label(QString());
    m_words->setObjectName("questionWords");
    for (QLabel* each : {m_title, m_words}) {
        each->setWordWrap(true);
        column->addWidget(each);
    }
    m_row = new FlowLayout;
    column->addSpacing(scaled(4));
    column->addLayout(m_row);
    connect(m_letter, &LoneKey::stoodAlone, this, &WeighQuestion::answer);
    hide();
}

QString WeighQuestion::title() const
{
    return isOpen() ? m_title->text() : QString();
}

QString WeighQuestion::words() const
{
    return isOpen() ? m_words->text() : QString();
}

void WeighQuestion::ask(const QString& title, const QString& words,
                        const std::vector<Choice>& choices)
{
    close();
    m_title->setText(title);
    m_words->setText(words);
    m_words->setVisible(!words.isEmpty());
    setAccessibleName(title);
    setAccessibleDescription(words);
    m_choices = choices;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        auto* made = new KeyButton(choices[i].text, choices[i].keyText, i == 0 ? "primary" : "");
        made->setObjectName(QStringLiteral("answer%1").arg(i));
        made->installEventFilter(this);
        connect(made, &QPushButton::clicked, this, [this, i] { answer(static_cast<int>(i)); });
        m_row->addWidget(made);
        m_buttons.push_back(made);
    }
    m_sinceAsked.start();
    show();
    setFocus();
    QAccessibleEvent alert(this, QAccessible::Alert);
    QAccessible::updateAccessibility(&alert);
}

void WeighQuestion::close()
{
    m_letter->drop();
    m_choices.clear();
    m_buttons.clear();
    clearLayout(m_row);
    hide();
}

bool WeighQuestion::takesKeys() const
{
    return isOpen() && m_sinceAsked.elapsed() >= kNoKeyFor;
}

void WeighQuestion::answer(int choice)
{
    if (isOpen()) {
        close();
        Q_EMIT answered(choice);
    }
}

int WeighQuestion::choiceOf(int key) const
{
    for (std::size_t i = 0; i < m_buttons.size(); ++i) {
        if (m_buttons[i]->hasFocus() && (isEnter(key) || key == Qt::Key_Space)) {
            return static_cast<int>(i);
        }
    }
    for (std::size_t i = 0; i < m_choices.size(); ++i) {
        if (m_choices[i].key == key || (isEnter(m_choices[i].key) && isEnter(key))) {
            return static_cast<int>(i);
        }
    }
    return -1;
}

void WeighQuestion::takeKey(QKeyEvent* event)
{
    const bool isBurst = m_letter->isInABurst(*event);
    const int choice = choiceOf(event->key());
    if (!takesKeys() || isBurst || event->isAutoRepeat() || choice < 0) {
        return;
    }
    if (isEnter(event->key()) || event->key() == Qt::Key_Escape) {
        answer(choice);
        return;
    }
    m_letter->waitFor(choice);
}

// Every key is taken while the question stands: none goes on to the page.
void WeighQuestion::keyPressEvent(QKeyEvent* event)
{
    takeKey(event);
    event->accept();
}

bool WeighQuestion::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() != QEvent::KeyPress) {
        return QFrame::eventFilter(watched, event);
    }
    auto* key = static_cast<QKeyEvent*>(event);
    if (key->key() == Qt::Key_Tab || key->key() == Qt::Key_Backtab) {
        return false;
    }
    takeKey(key);
    return true;
}

} // namespace plumule::ui

#include "moc_weigh_question.cpp"
