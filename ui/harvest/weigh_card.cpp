#include "ui/harvest/weigh_card.h"

#include "ui/harvest/weigh_question.h"
#include "ui/medium/marker.h"
#include "ui/widget/emptied.h"
#include "ui/widget/key_button.h"

#include <QBoxLayout>
#include <QKeyEvent>

namespace plumule::ui {

// A plus after a weight sets the bowl down and takes the next one; before a weight it is its sign,
// as scales send it.
//
// Undo at the scale takes back what was recorded; a field's own undo would bring an old weight
// back.
bool WeighCard::eventFilter(QObject* watched, QEvent* event)
{
    if (event->type() == QEvent::ShortcutOverride) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->matches(QKeySequence::Undo) || key->matches(QKeySequence::Redo)) {
            event->ignore();
            return true;
        }
    }
    if (watched == m_gross && event->type() == QEvent::KeyPress) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->text() == "+" && m_gross->reading()) {
            addBowl();
            return true;
        }
    }
    return Card::eventFilter(watched, event);
}

// A label scanned into the weight is a tray, not a weight: nothing is lost by it.
void WeighCard::enterWeight()
{
    const QString text = m_gross->text().trimmed();
    if (!text.isEmpty() && text.front().isLetter() && !m_gross->reading()) {
        emptyForGood(*m_gross);
        Q_EMIT codeEntered(text);
        return;
    }
    Q_EMIT recordAsked();
}

void WeighCard::addBowl()
{
    const auto all = bowls();
    if (!all) {
        say(tr("Weigh this bowl first, then add another."), "warning");
        return;
    }
    m_bowls = *all;
    emptyForGood(*m_gross);
    showBowls();
    showNet();
    m_gross->setFocus();
}

Result<std::vector<BowlDraft>> WeighCard::bowls() const
{
    std::vector<BowlDraft> all = m_bowls;
    if (m_gross->isBlank() && !all.empty()) {
        return all;
    }
    const auto gross = m_gross->reading();
    if (!gross) {
        return passOn(gross);
    }
    // What the scale sent as net has its tare taken off already.
    Mass tare;
    if (!gross->isNet && !m_tare->isBlank()) {
        const auto read = m_tare->reading();
        if (!read) {
            return passOn(read);
        }
        tare = read->mass;
    }
    all.push_back({gross->mass, tare, gross->isStable, gross->isNet});
    return all;
}

void WeighCard::setBowls(const std::vector<Bowl>& bowls)
{
    m_bowls.clear();
    for (std::size_t i = 0; i + 1 < bowls.size(); ++i) {
        m_bowls.push_back({bowls[i].gross, bowls[i].tare});
    }
    if (!bowls.empty()) {
        m_gross->setMass(bowls.back().gross);
        m_tare->setMass(bowls.back().tare);
    }
    showBowls();
    showNet();
    m_gross->selectAll();
    focusWeight();
}

void WeighCard::setGross(std::size_t bowl, Mass gross)
{
    if (bowl < m_bowls.size()) {
        m_bowls[bowl].gross = gross;
        showBowls();
        showNet();
        Q_EMIT edited();
    } else {
        m_gross->setMass(gross);
    }
}

void WeighCard::clearBowl(std::size_t bowl)
{
    if (bowl < m_bowls.size()) {
        m_bowls.erase(m_bowls.begin() + static_cast<std::ptrdiff_t>(bowl));
        showBowls();
        showNet();
        Q_EMIT edited();
    } else {
        emptyForGood(*m_gross);
    }
    focusWeight();
}

void WeighCard::showNet()
{
    const auto all = bowls();
    if (!all) {
        m_net->setText(QStringLiteral("–"));
        return;
    }
    Mass net;
    for (const BowlDraft& bowl : *all) {
        net += bowl.gross - bowl.tare;
    }
    m_net->setText(scaleTextWithUnit(net, unit()));
}

void WeighCard::showBowls()
{
    Mass sum;
    for (const BowlDraft& bowl : m_bowls) {
        sum += bowl.gross - bowl.tare;
    }
    const int count = static_cast<int>(m_bowls.size());
    m_tareName->setText(m_bowls.empty() ? tr("Tare (bowl)") : tr("Tare, bowl %1").arg(count + 1));
    m_bowlWords->setVisible(!m_bowls.empty());
    m_bowlWords->setText(
        tr("%n bowl(s) set down: %1", nullptr, count).arg(scaleTextWithUnit(sum, unit())));
}

// Seen, read aloud and written on the button that it acts on.
void WeighCard::showAgain()
{
    const bool isOn = m_again->isChecked();
    m_again->setAccessibleName(isOn ? tr("Cut again later: on") : tr("Cut again later: off"));
    m_againWords->setVisible(isOn && m_tray.has_value());
    if (m_tray) {
        const QString code = QString::fromStdString(m_tray->record.tray.code);
        m_againWords->setText(
            m_tray->spot
                ? tr("Cut %1, and not the last: %2 then grows on at %3.")
                      .arg(m_tray->cut)
                      .arg(code, nameOf(m_tray->spot))
                : tr("Cut %1, and not the last: %2 then grows on.").arg(m_tray->cut).arg(code));
    }
}

void WeighCard::showPlace(const TrayAtScale& tray)
{
    QStringList words;
    if (tray.record.trialName) {
        words << tr("Trial “%1”").arg(QString::fromStdString(*tray.record.trialName));
    }
    if (tray.record.tray.block) {
        words << tr("block %1").arg(*tray.record.tray.block);
    }
    if (tray.spot) {
        words << nameOf(tray.spot);
    }
    words << (tray.lastDay ? tr("day %1 of %2").arg(tray.day).arg(*tray.lastDay)
                           : tr("day %1").arg(tray.day));
    if (tray.cut > 1) {
        words << tr("cut %1").arg(tray.cut);
    }
    m_place->setText(words.join(QStringLiteral(" · ")));
}

void WeighCard::showTray(const TrayAtScale& tray, Weighing what)
{
    const TrayRecord& record = tray.record;
    m_tray = tray;
    m_code->setText(QString::fromStdString(record.tray.code));
    m_variety->setText(QString::fromStdString(record.variety));
    QString medium = QString::fromStdString(record.medium.name);
    if (record.pieceNumber) {
        medium += tr(", piece %1").arg(*record.pieceNumber);
    }
    if (tray.pieceUse) {
        medium += tr(", use %1").arg(*tray.pieceUse);
    }
    m_medium->setText(medium);
    m_marker->setMarker(record.medium.marker);
    m_marker->show();
    showPlace(tray);
    showTrayWords();
    m_again->setVisible(what == Weighing::Cut);
    m_again->setChecked(false);
    showAgain();
    m_bowls.clear();
    emptyForGood(*m_gross);
    showBowls();
    showNet();
    focusWeight();
}

void WeighCard::showNoTray()
{
    m_tray.reset();
    emptyForGood(*m_code);
    m_variety->clear();
    m_medium->clear();
    m_place->clear();
    m_marker->hide();
    showTrayWords();
    m_bowls.clear();
    emptyForGood(*m_gross);
    m_again->setChecked(false);
    showAgain();
    showBowls();
    showNet();
    say(QString(), "muted");
}

void WeighCard::setCode(const QString& code)
{
    m_code->setText(code);
}

QString WeighCard::code() const
{
    return m_code->text().trimmed();
}

QString WeighCard::weightText() const
{
    return m_gross->text();
}

void WeighCard::setWeightText(const QString& text)
{
    m_gross->setText(text);
}

// A tare that was typed is the same bowl's in the other unit too.
void WeighCard::setUnit(MassUnit unit)
{
    if (const auto tare = m_tare->reading()) {
        m_tare->setMass(tare->mass);
    }
    m_gross->setUnit(unit);
    m_tare->setUnit(unit);
    showBowls();
    showNet();
}

void WeighCard::setTare(Mass tare)
{
    m_tare->setMass(tare);
}

bool WeighCard::isLastCut() const
{
    return !m_again->isChecked();
}

void WeighCard::setLastCut(bool isLast)
{
    m_again->setChecked(!isLast);
}

void WeighCard::setDoubted(bool isDoubted)
{
    m_gross->setDoubted(isDoubted);
    m_record->setEnabled(!isDoubted);
}

void WeighCard::say(const QString& words, const char* role)
{
    m_words->setText(words);
    setRole(m_words, role);
    if (QLatin1String(role) == QLatin1String("warning")) {
        bringIntoView(*m_words);
    }
}

void WeighCard::setRecordName(const QString& name)
{
    m_record->setText(name);
    m_record->setAccessibleName(name);
}

void WeighCard::focusCode()
{
    m_code->setFocus();
    m_code->selectAll();
}

void WeighCard::focusWeight()
{
    m_gross->setFocus();
}

void WeighCard::setWide(bool isWide)
{
    const auto direction = isWide ? QBoxLayout::LeftToRight : QBoxLayout::TopToBottom;
    m_top->setDirection(direction);
    m_weights->setDirection(direction);
    showTrayWords();
}

// Below the code they take no room until there is something to say.
void WeighCard::showTrayWords()
{
    m_trayWords->setVisible(m_tray.has_value() || m_top->direction() == QBoxLayout::LeftToRight);
}

} // namespace plumule::ui

#include "moc_weigh_card.cpp"
