#include "ui/harvest/weigh_card.h"

#include "ui/medium/marker.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/theme.h"

#include <QHBoxLayout>
#include <QKeyEvent>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

QLineEdit* bigField(const char* name, double size, Qt::Alignment alignment)
{
    auto* field = new QLineEdit;
    field->setObjectName(name);
    field->setFont(uiFont(size, QFont::DemiBold));
    field->setStyleSheet(
        QStringLiteral("font-size: %1pt; font-weight: 600;").arg(uiFont(size).pointSizeF()));
    field->setAlignment(alignment);
    return field;
}

QVBoxLayout* under(const QString& heading, QWidget* field)
{
    auto* column = new QVBoxLayout;
    column->setSpacing(scaled(4));
    auto* words = label(heading, "muted");
    words->setBuddy(field);
    column->addWidget(words);
    column->addWidget(field);
    return column;
}

} // namespace

WeighCard::WeighCard(QWidget* parent)
    : Card(QString(), "card", parent)
{
    body()->addWidget(buildTop());
    body()->addWidget(buildWeights());
    body()->addWidget(buildFoot());
    wireSignals();
    showNoTray();
}

QWidget* WeighCard::buildTop()
{
    auto* top = new QWidget;
    auto* row = new QHBoxLayout(top);
    row->setContentsMargins(0, 0, 0, 0);
    m_code = bigField("code", 2.2, Qt::AlignLeft);
    m_code->setAccessibleName(tr("Tray"));
    m_code->setPlaceholderText(tr("code"));
    m_code->setMaximumWidth(scaled(280));
    row->addLayout(under(tr("Tray: type or scan its label"), m_code));
    row->addStretch(1);
    auto* words = new QVBoxLayout;
    words->setSpacing(scaled(3));
    m_variety = label(QString(), "code");
    m_variety->setObjectName("variety");
    m_medium = label(QString());
    m_medium->setObjectName("medium");
    m_trial = label(QString(), "muted");
    m_trial->setWordWrap(true);
    m_trial->setMinimumWidth(scaled(150));
    m_marker = new MarkerDot(0);
    auto* mediumRow = new QHBoxLayout;
    mediumRow->addStretch(1);
    mediumRow->addWidget(m_marker);
    mediumRow->addWidget(m_medium);
    for (QLabel* each : {m_variety, m_medium, m_trial}) {
        each->setAlignment(Qt::AlignRight);
    }
    words->addWidget(m_variety);
    words->addLayout(mediumRow);
    words->addWidget(m_trial);
    words->addStretch(1);
    row->addLayout(words);
    return top;
}

QWidget* WeighCard::buildWeights()
{
    auto* weights = new QWidget;
    auto* row = new QHBoxLayout(weights);
    row->setContentsMargins(0, scaled(6), 0, 0);
    row->setSpacing(scaled(18));
    m_gross = bigField("gross", 3.2, Qt::AlignRight);
    m_gross->setAccessibleName(tr("Gross weight"));
    m_tare = bigField("tare", 1.6, Qt::AlignRight);
    m_tare->setAccessibleName(tr("Tare of the bowl"));
    m_tare->setMaximumWidth(scaled(150));
    m_net = label(QString());
    m_net->setObjectName("net");
    m_net->setFont(uiFont(2.6, QFont::Bold));
    m_net->setStyleSheet(
        QStringLiteral("font-size: %1pt; font-weight: 700;").arg(uiFont(2.6).pointSizeF()));
    m_net->setAlignment(Qt::AlignRight | Qt::AlignBottom);
    m_net->setMinimumWidth(scaled(130));
    row->addLayout(under(tr("Gross"), m_gross), 3);
    auto* tare = under(tr("Tare (bowl)"), m_tare);
    tare->insertStretch(0, 1);
    row->addLayout(tare, 1);
    auto* net = under(tr("Net"), m_net);
    net->insertStretch(0, 1);
    row->addLayout(net, 2);
    return weights;
}

QWidget* WeighCard::buildFoot()
{
    auto* foot = new QWidget;
    auto* row = new QHBoxLayout(foot);
    row->setContentsMargins(0, scaled(6), 0, 0);
    row->setSpacing(scaled(8));
    auto* words = new QVBoxLayout;
    m_bowlWords = label(QString(), "muted");
    m_bowlWords->setObjectName("bowls");
    m_words = label(QString());
    m_words->setObjectName("words");
    m_words->setWordWrap(true);
    m_words->setMinimumWidth(scaled(140));
    words->addWidget(m_words);
    words->addWidget(m_bowlWords);
    m_addBowl = button(tr("Another bowl  +"));
    m_addBowl->setObjectName("addBowl");
    m_again = button(tr("Cut again later  F4"));
    m_again->setObjectName("again");
    m_again->setCheckable(true);
    m_record = button(tr("Record, next tray ⏎"), "primary");
    m_record->setObjectName("record");
    auto* acts = new FlowLayout;
    for (QPushButton* act : {m_addBowl, m_again, m_record}) {
        acts->addWidget(act);
    }
    row->addLayout(words, 1);
    row->addLayout(acts);
    return foot;
}

void WeighCard::wireSignals()
{
    connect(m_code, &QLineEdit::returnPressed, this,
            [this] { Q_EMIT codeEntered(m_code->text()); });
    connect(m_gross, &QLineEdit::returnPressed, this, &WeighCard::enterWeight);
    connect(m_tare, &QLineEdit::returnPressed, this, &WeighCard::recordAsked);
    for (QLineEdit* field : {m_gross, m_tare}) {
        connect(field, &QLineEdit::textChanged, this, [this] {
            showNet();
            Q_EMIT edited();
        });
    }
    connect(m_record, &QPushButton::clicked, this, &WeighCard::recordAsked);
    connect(m_addBowl, &QPushButton::clicked, this, &WeighCard::addBowl);
    connect(m_again, &QPushButton::toggled, this, &WeighCard::edited);
    for (QLineEdit* field : {m_code, m_gross, m_tare}) {
        field->installEventFilter(this);
    }
}

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
        if (key->text() == "+" && scaleReadingFrom(m_gross->text().toStdString(), m_unit)) {
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
    const bool isCode =
        !text.isEmpty() && text.front().isLetter() && !scaleReadingFrom(text.toStdString(), m_unit);
    if (isCode) {
        m_gross->clear();
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
    m_gross->clear();
    showBowls();
    showNet();
    m_gross->setFocus();
}

Result<std::vector<BowlDraft>> WeighCard::bowls() const
{
    std::vector<BowlDraft> all = m_bowls;
    if (m_gross->text().trimmed().isEmpty() && !all.empty()) {
        return all;
    }
    const auto gross = scaleReadingFrom(m_gross->text().toStdString(), m_unit);
    if (!gross) {
        return passOn(gross);
    }
    // What the scale sent as net has its tare taken off already.
    Mass tare;
    if (!gross->isNet && !m_tare->text().trimmed().isEmpty()) {
        const auto read = scaleReadingFrom(m_tare->text().toStdString(), m_unit);
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
        m_gross->setText(massText(bowls.back().gross));
        m_tare->setText(massText(bowls.back().tare));
    }
    showBowls();
    m_gross->selectAll();
    focusWeight();
}

QString WeighCard::massText(Mass mass) const
{
    return m_unit == MassUnit::Gram ? numberText(inGrams(mass), 1) : numberText(inOunces(mass), 2);
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
    m_net->setText(massText(net) + (m_unit == MassUnit::Gram ? " g" : " oz"));
}

void WeighCard::showBowls()
{
    Mass sum;
    for (const BowlDraft& bowl : m_bowls) {
        sum += bowl.gross - bowl.tare;
    }
    m_bowlWords->setVisible(!m_bowls.empty());
    m_bowlWords->setText(tr("%n bowl(s) set down: %1", nullptr, static_cast<int>(m_bowls.size()))
                             .arg(massText(sum) + (m_unit == MassUnit::Gram ? " g" : " oz")));
}

void WeighCard::showTray(const TrayAtScale& tray, bool isResidue)
{
    const TrayRecord& record = tray.record;
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
    QStringList words;
    if (record.trialName) {
        words << tr("Trial “%1”").arg(QString::fromStdString(*record.trialName));
    }
    if (record.tray.block) {
        words << tr("block %1").arg(*record.tray.block);
    }
    const QString day = tr("day %1").arg(tray.day);
    m_trial->setText(words.isEmpty() ? day : words.join(", ") + " · " + day);
    m_again->setVisible(!isResidue);
    m_again->setChecked(false);
    m_bowls.clear();
    m_gross->clear();
    showBowls();
    showNet();
    focusWeight();
}

void WeighCard::showNoTray()
{
    m_code->clear();
    m_variety->clear();
    m_medium->clear();
    m_trial->clear();
    m_marker->hide();
    m_bowls.clear();
    m_gross->clear();
    m_again->setChecked(false);
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

void WeighCard::setUnit(MassUnit unit)
{
    const auto tare = scaleReadingFrom(m_tare->text().toStdString(), m_unit);
    m_unit = unit;
    if (tare) {
        m_tare->setText(massText(tare->mass));
    }
    showBowls();
    showNet();
}

void WeighCard::setTare(Mass tare)
{
    m_tare->setText(massText(tare));
}

bool WeighCard::isLastCut() const
{
    return !m_again->isChecked();
}

void WeighCard::setLastCut(bool isLast)
{
    m_again->setChecked(!isLast);
}

void WeighCard::say(const QString& words, const char* role)
{
    m_words->setText(words);
    setRole(m_words, role);
}

void WeighCard::setRecordName(const QString& name)
{
    m_record->setText(name);
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

} // namespace plumule::ui

#include "moc_weigh_card.cpp"
