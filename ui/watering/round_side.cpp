#include "ui/watering/round_side.h"

#include "ui/watering/round_text.h"
#include "ui/widget/emptied.h"
#include "ui/widget/key_button.h"
#include "ui/widget/plain_words.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QHBoxLayout>
#include <QKeyEvent>

#include <algorithm>

namespace plumule::ui {
namespace {

QWidget* line(const QString& name, const QString& value, const char* nameRole,
              const char* valueRole)
{
    auto* both = new QWidget;
    auto* row = new QHBoxLayout(both);
    row->setContentsMargins(scaled(4), scaled(5), scaled(4), scaled(5));
    auto* words = label(name, nameRole);
    words->setWordWrap(true);
    row->addWidget(words, 1);
    row->addWidget(label(value, valueRole), 0, Qt::AlignRight | Qt::AlignVCenter);
    return both;
}

// Kept on one line where words are wrapped.
QString unbroken(QString amount)
{
    amount.replace(' ', QChar(QChar::Nbsp));
    return amount.replace(QStringLiteral("/"), QStringLiteral("/\u2060"));
}

QLabel* wrapped(const QString& text, const char* role)
{
    auto* words = label(text, role);
    words->setWordWrap(true);
    return words;
}

} // namespace

RoundSide::RoundSide(QWidget* parent)
    : QWidget(parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    buildMix();
    m_tomorrow = new Card(tr("Tomorrow"), "card", this);
    m_tomorrow->setObjectName("tomorrow");
    m_tomorrow->body()->setSpacing(0);
    auto* mind = new Card(tr("Mind"), "caution", this);
    mind->body()->addWidget(wrapped(
        tr("pH adjusters burn skin and eyes: wear gloves and glasses, and follow the label. Keep "
           "plugs above the water and behind an RCD (GFCI); wiring is for a licensed electrician."),
        ""));
    column->addWidget(m_mix);
    column->addWidget(m_tomorrow);
    m_low = wrapped(QString(), "muted");
    m_low->setObjectName("lowStock");
    m_low->setContentsMargins(scaled(6), 0, scaled(6), 0);
    m_low->hide();
    column->addWidget(m_low);
    column->addWidget(mind);
    column->addStretch(1);
}

void RoundSide::buildMix()
{
    m_mix = new Card(tr("Mix for this round"), "card", this);
    m_mix->setObjectName("mix");
    m_mixLines = new QVBoxLayout;
    m_mixLines->setSpacing(0);
    m_advice = new QVBoxLayout;
    m_advice->setSpacing(scaled(4));
    m_note = new KeyButton(tr("Note pH and EC"), 'M');
    m_note->setObjectName("noteReading");
    buildReading();
    m_mix->body()->addLayout(m_mixLines);
    m_mix->body()->addLayout(m_advice);
    m_mix->body()->addWidget(m_note, 0, Qt::AlignLeft);
    m_mix->body()->addWidget(m_reading);
    connect(m_note, &QPushButton::clicked, this, &RoundSide::askReading);
}

void RoundSide::buildReading()
{
    m_reading = new QWidget(m_mix);
    auto* column = new QVBoxLayout(m_reading);
    column->setContentsMargins(0, 0, 0, 0);
    m_kinds = new Segmented({tr("Nutrient mix"), tr("pH set")});
    m_kinds->setObjectName("readingKind");
    m_waters = {WaterKind::Nutrient, WaterKind::PhSet};
    m_ph = new NumberField(tr("pH"));
    m_ph->setObjectName("mixPh");
    m_ph->setAccessibleName(tr("pH of the mixed water"));
    m_ph->setRange(0, 14);
    m_ec = new NumberField(QStringLiteral("µS/cm"));
    m_ec->setObjectName("mixEc");
    m_ec->setAccessibleName(tr("EC of the mixed water"));
    m_ec->setRange(0, 20'000);
    auto* fields = new QHBoxLayout;
    fields->addWidget(m_ph, 2);
    fields->addWidget(m_ec, 3);
    auto* close = button(tr("Close"));
    auto* save = button(tr("Save (Enter)"), "primary");
    save->setObjectName("saveReading");
    auto* buttons = new QHBoxLayout;
    buttons->addStretch(1);
    buttons->addWidget(close);
    buttons->addWidget(save);
    column->addWidget(m_kinds);
    column->addLayout(fields);
    column->addLayout(buttons);
    m_reading->hide();
    connect(m_ph, &QLineEdit::returnPressed, this, &RoundSide::takeReading);
    connect(m_ec, &QLineEdit::returnPressed, this, &RoundSide::takeReading);
    connect(save, &QPushButton::clicked, this, &RoundSide::takeReading);
    connect(close, &QPushButton::clicked, this, &RoundSide::closeReading);
}

void RoundSide::showRound(const Round& round, const UnitText& units, Date today,
                          const std::vector<Spot>& freeSpots)
{
    const RoundKey key{round.date, round.slot};
    const Shown shown{key, round.mix, round.tomorrow, units.units(), today, freeSpots};
    if (m_shown == shown) {
        return; // a tick changes none of it
    }
    m_shown = shown;
    showMix(round, units);
    showAdvice(round);
    showTomorrow(round, today, freeSpots);
    m_mix->setVisible(!round.mix.empty());
}

void RoundSide::showMix(const Round& round, const UnitText& units)
{
    clearLayout(m_mixLines);
    for (const MixLine& mix : round.mix) {
        if (m_mixLines->count() > 0) {
            m_mixLines->addWidget(rule());
        }
        const bool isMeasured = mix.total > Volume();
        m_mixLines->addWidget(line(mixName(mix),
                                   isMeasured ? units.mixed(mix.total) : trayCount(mix.unmeasured),
                                   "", isMeasured ? "strong" : "muted"));
        if (isMeasured && mix.unmeasured > 0) {
            m_mixLines->addWidget(
                wrapped(tr("and %1 without an amount").arg(trayCount(mix.unmeasured)), "muted"));
        }
        if (mix.asNeeded > Volume()) {
            m_mixLines->addWidget(
                line(tr("as needed, at most, in it"), units.mixed(mix.asNeeded), "muted", "muted"));
        }
        if (mix.recipe && mix.concentrate) {
            m_mixLines->addWidget(rule());
            m_mixLines->addWidget(
                line(tr("%1 %2").arg(mix.recipe->concentrate.empty()
                                         ? tr("concentrate")
                                         : QString::fromStdString(mix.recipe->concentrate),
                                     unbroken(units.dose(*mix.recipe->dosePerLitre))),
                     units.concentrate(*mix.concentrate), "muted", ""));
        } else if (mix.water == WaterKind::Nutrient) {
            m_mixLines->addWidget(wrapped(tr("No dose is set up for it."), "warning"));
        }
    }
}

void RoundSide::showAdvice(const Round& round)
{
    clearLayout(m_advice);
    std::vector<WaterKind> said;
    for (const MixLine& mix : round.mix) {
        const bool isSaid = std::find(said.begin(), said.end(), mix.water) != said.end();
        const QString band = mix.recipe ? bandText(*mix.recipe) : QString();
        if (isSaid || band.isEmpty()) {
            continue;
        }
        said.push_back(mix.water);
        QString words = tr("%1: set to %2 after mixing.").arg(capitalised(nameOf(mix.water)), band);
        const RoundKey key{round.date, round.slot};
        if (mix.lastReading && !isOutsideBand(*mix.lastReading, *mix.recipe)) {
            words += ' ' + tr("Last reading %1.").arg(readingText(*mix.lastReading, key));
        }
        m_advice->addWidget(wrapped(words, "muted"));
        if (mix.lastReading && isOutsideBand(*mix.lastReading, *mix.recipe)) {
            m_advice->addWidget(wrapped(
                tr("Last reading out of the band: %1.").arg(readingText(*mix.lastReading, key)),
                "warning"));
        }
    }
}

void RoundSide::showTomorrow(const Round& round, Date today, const std::vector<Spot>& freeSpots)
{
    m_tomorrow->setHeading(round.date == today ? tr("Tomorrow") : dayText(round.date + 1));
    clearLayout(m_tomorrow->body());
    const Tomorrow& next = round.tomorrow;
    const auto add = [this](const QString& name, const QString& value) {
        if (m_tomorrow->body()->count() > 0) {
            m_tomorrow->body()->addWidget(rule());
        }
        QWidget* row = line(name, value, "", "");
        m_tomorrow->body()->addWidget(row);
        return row;
    };
    add(tr("Harvest due"), trayCount(next.harvests));
    add(tr("Into light"), trayCount(next.intoLight));
    add(tr("Into blackout"), trayCount(next.intoBlackout));
    add(tr("Sow"), trayCount(next.toSow));
    QWidget* free =
        add(tr("Free places now"), tr("%1 of %2").arg(next.freePlaces).arg(next.places));
    QStringList names;
    for (const Spot& spot : freeSpots) {
        names << nameOf(std::optional(spot));
    }
    free->setToolTip(plainHint(names.mid(0, 24).join('\n')));
}

void RoundSide::sayLow(const QString& words)
{
    m_low->setText(words);
    m_low->setVisible(!words.isEmpty());
}

void RoundSide::askReading()
{
    if (!m_mix->isVisible()) {
        return;
    }
    m_note->hide();
    m_reading->show();
    m_ph->setFocus();
}

void RoundSide::takeReading()
{
    const auto ph = m_ph->number();
    const auto ec = m_ec->number();
    m_ph->markWrong(!ph.has_value());
    m_ec->markWrong(!ec.has_value());
    if (!ph || !ec) {
        (ph ? m_ec : m_ph)->setFocus();
        return;
    }
    if (!*ph && !*ec) {
        closeReading();
        return;
    }
    const auto kind = static_cast<std::size_t>(m_kinds->chosen());
    Q_EMIT readingNoted(m_waters[kind], *ph, *ec);
}

void RoundSide::closeReading()
{
    for (NumberField* field : {m_ph, m_ec}) {
        emptyForGood(*field);
        field->markWrong(false);
    }
    m_reading->hide();
    m_note->show();
    Q_EMIT readingClosed();
}

void RoundSide::keyPressEvent(QKeyEvent* event)
{
    if (event->key() == Qt::Key_Escape && m_reading->isVisible()) {
        closeReading();
        return;
    }
    QWidget::keyPressEvent(event);
}

} // namespace plumule::ui

#include "moc_round_side.cpp"
