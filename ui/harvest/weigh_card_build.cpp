// Part of ui/harvest/weigh_card.h: how it is made up.
#include "ui/harvest/weigh_card.h"

#include "ui/harvest/weigh_question.h"
#include "ui/medium/marker.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/key_button.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QVBoxLayout* under(QLabel* heading, QWidget* field)
{
    auto* column = new QVBoxLayout;
    column->setSpacing(scaled(4));
    heading->setBuddy(field);
    column->addWidget(heading);
    column->addWidget(field);
    return column;
}

QLabel* wrapped(const char* name, const char* role = "muted")
{
    auto* words = label(QString(), role);
    words->setObjectName(name);
    words->setWordWrap(true);
    return words;
}

} // namespace

WeighCard::WeighCard(QWidget* parent)
    : Card(QString(), "card", parent)
{
    m_question = new WeighQuestion;
    body()->setSpacing(scaled(12));
    body()->addWidget(buildTop());
    body()->addWidget(buildWeights());
    body()->addWidget(m_question);
    body()->addWidget(buildFoot());
    wireSignals();
    showNoTray();
}

QWidget* WeighCard::buildTop()
{
    auto* top = new QWidget;
    m_top = new QHBoxLayout(top);
    m_top->setContentsMargins(0, 0, 0, 0);
    m_code = new QLineEdit;
    m_code->setObjectName("code");
    m_code->setFont(uiFont(2.2, QFont::DemiBold));
    m_code->setStyleSheet(
        QStringLiteral("font-size: %1pt; font-weight: 600;").arg(uiFont(2.2).pointSizeF()));
    m_code->setAccessibleName(tr("Tray"));
    m_code->setPlaceholderText(tr("code"));
    m_code->setMaximumWidth(scaled(300));
    m_code->setMinimumHeight(QFontMetrics(uiFont(2.2, QFont::DemiBold)).height() + scaled(14));
    m_code->setMinimumWidth(m_code->fontMetrics().horizontalAdvance("WW0000") + scaled(28));
    m_top->addLayout(under(label(tr("Tray: type or scan its label"), "muted"), m_code), 2);
    m_trayWords = buildTrayWords();
    m_top->addWidget(m_trayWords, 3);
    return top;
}

QWidget* WeighCard::buildTrayWords()
{
    auto* holder = new QWidget;
    auto* words = new QVBoxLayout(holder);
    words->setContentsMargins(0, 0, 0, 0);
    words->setSpacing(scaled(3));
    m_variety = wrapped("variety", "code");
    m_medium = wrapped("medium", "");
    m_place = wrapped("place");
    for (QLabel* each : {m_variety, m_medium, m_place}) {
        each->setAlignment(Qt::AlignRight | Qt::AlignTop);
    }
    m_marker = new MarkerDot(0);
    auto* medium = new QHBoxLayout;
    medium->addStretch(1);
    medium->addWidget(m_marker, 0, Qt::AlignTop);
    medium->addWidget(m_medium);
    m_medium->setSizePolicy(QSizePolicy::Maximum, QSizePolicy::Preferred);
    words->addWidget(m_variety);
    words->addLayout(medium);
    words->addWidget(m_place);
    words->addStretch(1);
    return holder;
}

QWidget* WeighCard::buildWeights()
{
    auto* weights = new QWidget;
    m_weights = new QHBoxLayout(weights);
    m_weights->setContentsMargins(0, 0, 0, 0);
    m_weights->setSpacing(scaled(16));
    // Of large type the figures are as large as the card is wide.
    m_gross = new ScaleField("gross", isTypeLarge() ? 2.6 : 3.4);
    m_gross->setAccessibleName(tr("Gross weight"));
    m_tare = new ScaleField("tare", 1.7);
    m_tare->setAccessibleName(tr("Tare of the bowl"));
    m_net = label(QString(), "muted");
    m_net->setObjectName("net");
    m_net->setAccessibleName(tr("Net"));
    m_net->setFont(uiFont(2.2, QFont::DemiBold));
    m_net->setStyleSheet(
        QStringLiteral("font-size: %1pt; font-weight: 600;").arg(uiFont(2.2).pointSizeF()));
    m_net->setAlignment(Qt::AlignRight | Qt::AlignVCenter);
    m_net->setMinimumWidth(m_net->fontMetrics().horizontalAdvance("0000.0 oz"));
    m_tare->setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
    m_net->setSizePolicy(QSizePolicy::Preferred, QSizePolicy::Expanding);
    m_tareName = label(QString(), "muted");
    auto* netName = label(tr("Net"), "muted");
    netName->setAlignment(Qt::AlignRight);
    m_weights->addLayout(under(label(tr("Gross"), "muted"), m_gross), 4);
    m_weights->addLayout(under(m_tareName, m_tare), 2);
    m_weights->addLayout(under(netName, m_net), 3);
    return weights;
}

QWidget* WeighCard::buildFoot()
{
    auto* foot = new QWidget;
    auto* column = new QVBoxLayout(foot);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(4));
    m_words = wrapped("words");
    m_bowlWords = wrapped("bowls");
    m_againWords = wrapped("againWords");
    for (QLabel* each : {m_words, m_bowlWords, m_againWords}) {
        column->addWidget(each);
    }
    m_addBowl = new KeyButton(tr("Another bowl"), "+");
    m_addBowl->setObjectName("addBowl");
    m_again = new KeyButton(tr("Cut again later"), "F4", "toggle");
    m_again->setObjectName("again");
    m_again->setCheckable(true);
    m_record = new KeyButton(tr("Record, next tray"), QStringLiteral("⏎"), "primary");
    m_record->setObjectName("record");
    auto* acts = new FlowLayout;
    for (KeyButton* act : {m_addBowl, m_again, m_record}) {
        acts->addWidget(act);
    }
    column->addSpacing(scaled(6));
    column->addLayout(acts);
    return foot;
}

void WeighCard::wireSignals()
{
    connect(m_code, &QLineEdit::returnPressed, this,
            [this] { Q_EMIT codeEntered(m_code->text()); });
    connect(m_gross, &QLineEdit::returnPressed, this, &WeighCard::enterWeight);
    connect(m_tare, &QLineEdit::returnPressed, this, &WeighCard::recordAsked);
    for (ScaleField* field : {m_gross, m_tare}) {
        connect(field, &QLineEdit::textChanged, this, [this] {
            showNet();
            Q_EMIT edited();
        });
    }
    connect(m_record, &QPushButton::clicked, this, &WeighCard::recordAsked);
    connect(m_addBowl, &QPushButton::clicked, this, &WeighCard::addBowl);
    connect(m_again, &QPushButton::toggled, this, [this] {
        showAgain();
        Q_EMIT edited();
    });
    for (QLineEdit* field :
         {m_code, static_cast<QLineEdit*>(m_gross), static_cast<QLineEdit*>(m_tare)}) {
        field->installEventFilter(this);
    }
}

} // namespace plumule::ui
