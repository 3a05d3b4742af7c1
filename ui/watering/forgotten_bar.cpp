#include "ui/watering/forgotten_bar.h"

#include "ui/watering/round_text.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>

namespace plumule::ui {

ForgottenBar::ForgottenBar(QWidget* parent)
    : QFrame(parent)
{
    setObjectName("forgotten");
    setProperty("role", "alarm");
    m_row = new QBoxLayout(QBoxLayout::LeftToRight, this);
    m_row->setContentsMargins(scaled(16), scaled(6), scaled(8), scaled(6));
    m_row->setSpacing(scaled(10));
    m_words = label(QString(), "warning");
    m_words->setObjectName("forgottenWords");
    m_words->setWordWrap(true);
    auto* take = button(tr("Take in hand"));
    take->setObjectName("takeForgotten");
    take->setMinimumHeight(scaled(44));
    take->setFocusPolicy(Qt::TabFocus);
    m_row->addWidget(m_words, 1);
    m_row->addWidget(take, 0);
    connect(take, &QPushButton::clicked, this, [this] { Q_EMIT handAsked(m_worst); });
    hide();
}

void ForgottenBar::showRound(const Round& round)
{
    const auto forgotten = round.forgotten();
    if (!forgotten.empty()) {
        m_worst = forgotten.front()->tray;
        QString words = forgottenText(round);
        if (forgotten.size() == 1) {
            const RoundTray& tray = *forgotten.front();
            words = tr("%1 %2, %3.")
                        .arg(words.chopped(1), QString::fromStdString(tray.medium.name),
                             nameOf(tray.spot));
            if (tray.looksSince > 0) {
                words += ' ' + looksText(tray.looksSince);
            }
        }
        m_words->setText(words);
    }
    setVisible(!forgotten.empty());
}

void ForgottenBar::resizeEvent(QResizeEvent* event)
{
    QFrame::resizeEvent(event);
    const bool isBeside = m_row->direction() == QBoxLayout::LeftToRight;
    m_row->setDirection(standsBeside(width(), scaled(460), isBeside) ? QBoxLayout::LeftToRight
                                                                     : QBoxLayout::TopToBottom);
}

} // namespace plumule::ui

#include "moc_forgotten_bar.cpp"
