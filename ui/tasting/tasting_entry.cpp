#include "ui/tasting/tasting_entry.h"

#include "core/base/number_text.h"
#include "core/journal/tasting/tasting_entries.h"
#include "ui/tasting/tasting_text.h"
#include "ui/widget/emptied.h"
#include "ui/widget/flow_layout.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QLineEdit>
#include <QTableView>
#include <QVBoxLayout>

#include <set>

namespace plumule::ui {
namespace {

constexpr int kMostMissingLines = 8;
constexpr int kFirstValueColumn = 3;

// A name above its field.
QWidget* named(const QString& name, QLineEdit* field, int wide)
{
    auto* box = new QWidget;
    auto* column = new QVBoxLayout(box);
    column->setContentsMargins(0, 0, scaled(10), scaled(4));
    column->setSpacing(scaled(3));
    auto* above = label(name, "muted");
    above->setBuddy(field);
    field->setAccessibleName(name);
    field->setFixedWidth(scaled(wide));
    column->addWidget(above);
    column->addWidget(field);
    return box;
}

} // namespace

TastingEntry::TastingEntry(Journal& journal, Services services, QWidget* parent)
    : QWidget(parent)
    , m_journal(journal)
    , m_services(services)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(scaled(14));
    buildFields();
    buildTable();
    column->addStretch(1);
}

void TastingEntry::buildFields()
{
    auto* card = new Card(tr("Type the scores in by code"));
    auto* fields = new QWidget;
    auto* row = new FlowLayout(fields);
    m_codeField = new QLineEdit;
    m_codeField->setObjectName("tastingCode");
    m_codeField->setMaxLength(3);
    row->addWidget(named(tr("Code, then Enter"), m_codeField, 120));
    m_values = new QWidget;
    new FlowLayout(m_values);
    m_who = label(QString(), "strong");
    m_who->setObjectName("tastingWho");
    m_said = label(QString(), "muted");
    m_said->setObjectName("tastingSaid");
    m_said->setWordWrap(true);
    card->body()->addWidget(fields);
    card->body()->addWidget(m_who);
    card->body()->addWidget(m_values);
    card->body()->addWidget(m_said);
    layout()->addWidget(card);
    connect(m_codeField, &QLineEdit::returnPressed, this, &TastingEntry::takeCode);
    connect(m_codeField, &QLineEdit::textEdited, this, [this] { markWrong(*m_codeField, false); });
}

void TastingEntry::buildTable()
{
    auto* card = new Card(tr("Servings"));
    m_count = label(QString(), "muted");
    m_count->setObjectName("tastingCount");
    m_model = new TextTable(this);
    m_table = plainTable(m_model, "tastingServings", tr("Servings"));
    m_table->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    m_table->horizontalHeader()->setTextElideMode(Qt::ElideRight);
    m_missing = label(QString(), "muted");
    m_missing->setObjectName("tastingMissing");
    m_missing->setWordWrap(true);
    card->body()->addWidget(m_count);
    card->body()->addWidget(m_table);
    card->body()->addWidget(m_missing);
    layout()->addWidget(card);
    for (const auto signal : {&QTableView::clicked, &QTableView::activated}) {
        connect(m_table, signal, this, [this](const QModelIndex& index) {
            m_codeField->setText(index.siblingAtColumn(2).data().toString());
            takeCode();
        });
    }
}

bool TastingEntry::isTriangle() const
{
    return m_shown.panel.method == TastingMethod::Triangle;
}

void TastingEntry::show(const PanelRecord& record)
{
    const bool isSame =
        record.panel.id == m_shown.panel.id && record.attributes == m_shown.attributes;
    m_shown = record;
    if (!isSame || servingWith(m_shown, m_code) == nullptr) {
        m_code.clear();
        m_who->setText(QString());
        buildValues();
    }
    if (!isSame) {
        emptyForGood(*m_codeField);
        say(isTriangle() ? tr("Type the code that the taster ticked, and Enter.")
                         : tr("Type a code and Enter, then a value at each attribute."),
            false);
    }
    showTable();
}

void TastingEntry::begin()
{
    m_codeField->setFocus();
    m_codeField->selectAll();
}

void TastingEntry::buildValues()
{
    clearLayout(m_values->layout());
    m_valueFields.clear();
    if (isTriangle()) {
        m_values->hide();
        return;
    }
    for (std::size_t i = 0; i < m_shown.attributes.size(); ++i) {
        auto* field = new QLineEdit;
        field->setObjectName(QStringLiteral("tastingValue%1").arg(i));
        field->setMaxLength(2);
        field->setEnabled(false);
        connect(field, &QLineEdit::returnPressed, this, [this, i] { takeValue(i); });
        connect(field, &QLineEdit::textEdited, this, [field] { markWrong(*field, false); });
        m_values->layout()->addWidget(named(attributeName(m_shown.attributes[i]), field, 92));
        m_valueFields.push_back(field);
    }
    m_values->show();
}

void TastingEntry::takeCode()
{
    const std::string code = m_codeField->text().trimmed().toStdString();
    if (code.empty()) {
        return;
    }
    const Serving* serving = servingWith(m_shown, code);
    if (serving == nullptr) {
        markWrong(*m_codeField, true);
        say(tr("There is no code %1 in this tasting.").arg(QString::fromStdString(code)), true);
        m_codeField->selectAll();
        return;
    }
    if (isTriangle()) {
        nameOddOne(*serving);
    } else {
        showServing(*serving);
    }
}

void TastingEntry::showServing(const Serving& serving)
{
    m_code = serving.code;
    m_who->setText(tr("%1  ·  %2  ·  served as number %3")
                       .arg(QString::fromStdString(serving.code),
                            QString::fromStdString(tasterOf(m_shown, serving)->name))
                       .arg(serving.turn));
    std::size_t first = 0;
    bool isFound = false;
    for (std::size_t i = 0; i < m_valueFields.size(); ++i) {
        const Score* score = scoreOf(m_shown, serving.id, m_shown.attributes[i].id);
        m_valueFields[i]->setEnabled(true);
        m_valueFields[i]->setText(score != nullptr ? QString::number(score->value) : QString());
        markWrong(*m_valueFields[i], false);
        if (score == nullptr && !isFound) {
            first = i;
            isFound = true;
        }
    }
    say(QString(), false);
    goTo(first);
}

void TastingEntry::nameOddOne(const Serving& serving)
{
    const auto entered = m_journal.tastings().enter(m_shown.panel.id, serving.code,
                                                    m_shown.attributes.front().id, 1);
    if (!entered) {
        say(sentence(entered.error()), true);
        return;
    }
    const QString name = QString::fromStdString(entered->taster.name);
    const QString code = QString::fromStdString(serving.code);
    say(entered->clashingCode ? tr("%1 named %2, no longer %3.")
                                    .arg(name, code, QString::fromStdString(*entered->clashingCode))
                              : tr("%1 named %2.").arg(name, code),
        false);
    emptyForGood(*m_codeField);
    begin();
}

void TastingEntry::goTo(std::size_t attribute)
{
    if (attribute < m_valueFields.size()) {
        m_valueFields[attribute]->setFocus();
        m_valueFields[attribute]->selectAll();
    } else {
        finishCode();
    }
}

void TastingEntry::takeValue(std::size_t attribute)
{
    if (keepValue(attribute)) {
        goTo(attribute + 1);
    }
}

bool TastingEntry::clearValue(std::size_t attribute)
{
    const Serving* serving = servingWith(m_shown, m_code);
    const PanelAttributeId id = m_shown.attributes[attribute].id;
    if (serving == nullptr || scoreOf(m_shown, serving->id, id) == nullptr) {
        return true;
    }
    const auto cleared = m_journal.tastings().clear(m_shown.panel.id, m_code, id);
    if (!cleared && cleared.error().kind != ErrorKind::NothingThere) {
        say(sentence(cleared.error()), true);
        return false;
    }
    say(tr("The score was taken out."), false);
    return true;
}

bool TastingEntry::keepValue(std::size_t attribute)
{
    QLineEdit& field = *m_valueFields[attribute];
    const std::string text = field.text().trimmed().toStdString();
    if (text.empty()) {
        return clearValue(attribute);
    }
    const auto value = wholeFromText(text);
    const auto entered = value ? m_journal.tastings().enter(m_shown.panel.id, m_code,
                                                            m_shown.attributes[attribute].id,
                                                            static_cast<int>(*value))
                               : Result<EnteredScore>(passOn(value));
    if (!entered) {
        markWrong(field, true);
        field.selectAll();
        say(sentence(entered.error()), true);
        return false;
    }
    if (entered->clashingCode) {
        say(tr("%1 has given the rank %2 to %3 too: one of the two is wrong.")
                .arg(QString::fromStdString(entered->taster.name), QString::fromStdString(text),
                     QString::fromStdString(*entered->clashingCode)),
            true);
    } else {
        say(QString(), false);
    }
    return true;
}

void TastingEntry::finishCode()
{
    // What was said about the last value stays to be read.
    if (m_said->text().isEmpty()) {
        say(tr("%1 is done.").arg(QString::fromStdString(m_code)), false);
    }
    for (QLineEdit* field : m_valueFields) {
        emptyForGood(*field);
        field->setEnabled(false);
    }
    m_code.clear();
    m_who->setText(QString());
    emptyForGood(*m_codeField);
    begin();
}

void TastingEntry::say(const QString& words, bool isWrong)
{
    m_said->setText(words);
    setRole(m_said, isWrong ? "warning" : "muted");
}

void TastingEntry::showTable()
{
    QStringList header{tr("Taster"), tr("Served"), tr("Code")};
    for (const PanelAttribute& attribute : m_shown.attributes) {
        header << attributeName(attribute);
    }
    m_model->show(header, tableRows());
    auto* head = m_table->horizontalHeader();
    for (int column = 0; column < m_model->columnCount(); ++column) {
        head->setSectionResizeMode(column, column > 0 && column < kFirstValueColumn
                                               ? QHeaderView::ResizeToContents
                                               : QHeaderView::Stretch);
    }
    fitHeight(*m_table);
    showMissing();
}

std::vector<TextRow> TastingEntry::tableRows() const
{
    std::set<std::string> clashing;
    for (const RankTwice& twice : ranksTwice(m_shown)) {
        clashing.insert(twice.codes.begin(), twice.codes.end());
    }
    std::vector<TextRow> rows;
    for (const Serving& serving : m_shown.servings) {
        TextRow row;
        row.cells = {QString::fromStdString(tasterOf(m_shown, serving)->name),
                     QString::number(serving.turn), QString::fromStdString(serving.code)};
        for (const PanelAttribute& attribute : m_shown.attributes) {
            const Score* score = scoreOf(m_shown, serving.id, attribute.id);
            row.cells << (score == nullptr ? QString()
                          : isTriangle()   ? tr("named")
                                           : QString::number(score->value));
        }
        row.isWarned = clashing.count(serving.code) > 0;
        rows.push_back(std::move(row));
    }
    return rows;
}

void TastingEntry::showMissing()
{
    m_count->setText(
        tr("%1 of %2 scores are in").arg(m_shown.scores.size()).arg(scoresWanted(m_shown)));
    QStringList missing = missingWords(missingScores(m_shown));
    if (missing.size() > kMostMissingLines) {
        const auto more = missing.size() - kMostMissingLines;
        missing = missing.mid(0, kMostMissingLines) << tr("and %1 more").arg(more);
    }
    m_missing->setText(missing.isEmpty() || m_shown.scores.empty()
                           ? QString()
                           : tr("Still to come:\n%1").arg(missing.join('\n')));
    m_missing->setVisible(!m_missing->text().isEmpty());
}

} // namespace plumule::ui

#include "moc_tasting_entry.cpp"
