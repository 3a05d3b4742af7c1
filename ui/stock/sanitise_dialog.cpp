#include "ui/stock/sanitise_dialog.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "ui/stock/stock_text.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/check_list.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QComboBox>
#include <QFormLayout>
#include <QHBoxLayout>

#include <cmath>

namespace plumule::ui {
namespace {

// The latest of all pieces.
const Sanitising* lastOf(const Stock& stock)
{
    const Sanitising* last = nullptr;
    for (const PieceGroup& group : stock.pieces) {
        for (const PieceLine& line : group.pieces) {
            const bool isLater =
                line.sanitised && (last == nullptr || line.sanitised->at() > last->at());
            last = isLater ? &*line.sanitised : last;
        }
    }
    return last;
}

} // namespace

SanitiseDialog::SanitiseDialog(Journal& journal, Services services, const Stock& stock,
                               QWidget* parent)
    : RecordDialog(journal, services, "sanitiseDialog", tr("Pieces were sanitised"), parent)
{
    setAttribute(Qt::WA_DeleteOnClose);
    buildFields();
    fill(stock);
    addSave("sanitiseSave", tr("Save"));
    panel()->settle();
}

void SanitiseDialog::buildFields()
{
    m_pieces = new CheckList("sanitisePieces");
    m_pieces->setAccessibleName(tr("Pieces"));
    m_pieces->setMinimumHeight(scaled(110));
    body()->addWidget(m_pieces);
    m_agent = new QComboBox;
    m_agent->setObjectName("sanitiseAgent");
    m_by = new QComboBox;
    m_by->setObjectName("sanitiseBy");
    for (QComboBox* each : {m_agent, m_by}) {
        each->setEditable(true);
        each->setInsertPolicy(QComboBox::NoInsert);
    }
    m_strength = new NumberField;
    m_strength->setObjectName("sanitiseStrength");
    m_strength->setPlaceholderText(tr("by the label"));
    m_unit = new QComboBox;
    m_unit->setObjectName("sanitiseUnit");
    addChoice(*m_unit, QStringLiteral("%"), StrengthUnit::Percent);
    addChoice(*m_unit, QStringLiteral("ppm"), StrengthUnit::Ppm);
    auto* strength = new QHBoxLayout;
    strength->addWidget(m_strength, 1);
    strength->addWidget(m_unit);
    m_minutes = new NumberField(tr("min"));
    m_minutes->setObjectName("sanitiseMinutes");
    m_minutes->setRange(0, kMinutesPerDay);
    QFormLayout* form = fieldForm();
    form->addRow(tr("With"), m_agent);
    form->addRow(tr("Strength"), strength);
    form->addRow(tr("Left on for"), m_minutes);
    form->addRow(tr("By"), m_by);
    body()->addLayout(form);
    auto* caution = new Card(tr("Mind"), "caution");
    auto* words = label(tr("Gloves and glasses; follow the label. Never mix chlorine with acids. "
                           "Clean before you sanitise."));
    words->setWordWrap(true);
    caution->body()->addWidget(words);
    body()->addWidget(caution);
}

void SanitiseDialog::fill(const Stock& stock)
{
    QStringList agents;
    for (const PieceGroup& group : stock.pieces) {
        for (const PieceLine& line : group.pieces) {
            if (line.due) {
                m_pieces->addCheck(tr("%1 %2, %3")
                                       .arg(QString::fromStdString(group.medium.name))
                                       .arg(line.record.piece.number)
                                       .arg(nowText(line)),
                                   line.record.piece.id.value, true);
            }
            if (line.sanitised) {
                agents << QString::fromStdString(line.sanitised->how.method);
            }
        }
    }
    for (const StockLine& line : stock.supplies) {
        if (line.item.kind == StockKind::Sanitiser) {
            agents << QString::fromStdString(line.item.name);
        }
    }
    agents.removeDuplicates();
    agents.sort();
    m_agent->addItems(agents);
    for (const std::string& name :
         journal().stock().people().value_or(std::vector<std::string>())) {
        m_by->addItem(QString::fromStdString(name));
    }
    m_by->setEditText(QString());
    if (const Sanitising* last = lastOf(stock)) {
        propose(last->how);
    }
}

void SanitiseDialog::propose(const SanitisingDraft& how)
{
    m_agent->setEditText(QString::fromStdString(how.method));
    m_strength->setNumber(how.strength, 1);
    ui::choose(*m_unit, how.strengthUnit);
    m_minutes->setNumber(
        how.contactMinutes ? std::optional(double(*how.contactMinutes)) : std::nullopt, 0);
    m_by->setEditText(QString::fromStdString(how.by));
}

std::optional<QString> SanitiseDialog::save()
{
    const auto strength = m_strength->number();
    const auto minutes = m_minutes->number();
    m_strength->markWrong(!strength);
    m_minutes->markWrong(!minutes);
    if (!strength || !minutes) {
        refuse(tr("Please check the marked fields."));
        return std::nullopt;
    }
    SanitisingDraft how;
    how.method = m_agent->currentText().toStdString();
    how.strength = *strength;
    how.strengthUnit = chosenOf<StrengthUnit>(*m_unit);
    how.contactMinutes =
        *minutes ? std::optional(static_cast<int>(std::lround(**minutes))) : std::nullopt;
    how.by = m_by->currentText().toStdString();
    const auto pieces = m_pieces->checked<PieceId>();
    const auto done = journal().media().sanitise(pieces, how);
    if (!done) {
        refuse(sentence(done.error()));
        return std::nullopt;
    }
    return tr("%n piece(s) sanitised.", nullptr, static_cast<int>(pieces.size()));
}

} // namespace plumule::ui

#include "moc_sanitise_dialog.cpp"
