// Part of ui/trial/plan_view.h: what is shown of a draft.
#include "ui/trial/plan_view.h"

#include "core/chart/chart_spec.h"
#include "core/journal/medium/medium_entries.h"
#include "core/journal/review/review_answers.h"
#include "core/journal/room/room_entries.h"
#include "core/journal/tray/tray_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "ui/chart/chart_view.h"
#include "ui/review/verdict_text.h"
#include "ui/trial/layout_grid.h"
#include "ui/trial/plan_form.h"
#include "ui/trial/plan_text.h"
#include "ui/widget/plain_table.h"
#include "ui/widget/text_table.h"
#include "ui/widget/theme.h"

#include <QHeaderView>
#include <QTableView>

#include <map>

namespace plumule::ui {
namespace {

// The codes that the trays will have, if no others are sown before them.
QStringList codesToCome(Journal& journal, VarietyId variety, std::size_t count)
{
    QStringList codes;
    const auto first = journal.trays().nextCode(variety);
    if (!first) {
        return codes;
    }
    const QString code = QString::fromStdString(*first);
    const auto digit =
        std::find_if(code.cbegin(), code.cend(), [](QChar c) { return c.isDigit(); });
    const auto prefix = static_cast<qsizetype>(digit - code.cbegin());
    const int number = code.mid(prefix).toInt();
    for (std::size_t i = 0; i < count; ++i) {
        codes << code.left(prefix) + QString::number(number + static_cast<int>(i))
                                         .rightJustified(code.size() - prefix, '0');
    }
    return codes;
}

LayoutTile::Content tileOf(const QString& code, const Medium& medium, const QString& feeding,
                           const std::optional<Spot>& spot, const QString& inSquare, bool isMoved)
{
    QStringList said{code,     QString::fromStdString(medium.name),
                     feeding,  nameOf(spot),
                     inSquare, isMoved ? PlanView::tr("moved by hand") : QString()};
    said.removeAll(QString());
    return {
        code, medium.marker, feeding, isMoved ? PlanView::tr("moved") : inSquare, said.join(", "),
        false};
}

} // namespace

void PlanView::showAnswer()
{
    const auto answer = m_journal.review().plan(m_draft);
    showOutlook(answer ? answer->outlook : passOn(answer));
    showFairness(answer && !m_fault ? answer->fairness : std::vector<Finding>());
}

void PlanView::showOutlook(const Result<PlanOutlook>& outlook)
{
    m_power->setVisible(outlook.has_value());
    if (!outlook) {
        m_powerTitle->setText(tr("Chance of an answer"));
        m_outlook->setText(sentence(outlook.error()));
        m_form->setSpreadWords({});
        m_form->setMarginWords({});
        return;
    }
    m_powerTitle->setText(powerTitle(*outlook, units()));
    m_power->draw(powerChart(*outlook));
    m_outlook->setText(outlookWords(*outlook, units()).join(' '));
    m_form->setSpreadWords(spreadWords(*outlook, units()));
    m_form->setMarginWords(marginWords(*outlook, units()));
}

void PlanView::showLayout()
{
    m_layoutTitle->setText(drawWords(m_draft));
    const bool isDrawn = !m_fault && !m_draft.trays.empty();
    m_grid->setVisible(isDrawn);
    m_sow->setEnabled(isDrawn && !m_journal.isReadOnly());
    m_keep->setEnabled(isDrawn && !m_journal.isReadOnly());
    m_prepare->setEnabled(isDrawn);
    m_sow->setText(tr("Sow these %n tray(s)", nullptr, m_draft.count()));
    if (!isDrawn) {
        m_layoutWords->setText(m_fault ? sentence(*m_fault) : QString());
        fillFreePlaces(-1);
        return;
    }
    m_grid->show(layoutRows(), LayoutGrid::Press::Exchanges);
    m_layoutWords->setText(layoutWords());
}

// A row a block; where there are no blocks, a row a shelf.
std::vector<LayoutGrid::Row> PlanView::layoutRows() const
{
    std::map<PlaceId, Spot> spots;
    if (const auto layout = m_journal.room().layout()) {
        for (const Spot& spot : layout->spots()) {
            spots.emplace(spot.place, spot);
        }
    }
    std::map<MediumId, Medium> media;
    for (const Medium& each : m_journal.media().all(Listed::All).value_or(std::vector<Medium>())) {
        media.emplace(each.id, each);
    }
    const QStringList codes = codesToCome(m_journal, m_draft.plan.variety, m_draft.trays.size());
    std::vector<LayoutGrid::Row> rows;
    int block = 0;
    for (std::size_t i = 0; i < m_draft.trays.size(); ++i) {
        const PlannedTray& tray = m_draft.trays[i];
        const Treatment& treatment = m_draft.treatments[static_cast<std::size_t>(tray.treatment)];
        const auto spot = tray.place ? std::optional(spots[*tray.place]) : std::nullopt;
        const QString shelf = spot ? QString::fromStdString(spot->rack + spot->shelf) : QString();
        if (rows.empty() || tray.block != block ||
            (m_draft.plan.design == Design::CompletelyRandom && rows.back().name != shelf)) {
            rows.push_back({shelf, {}});
            block = tray.block;
        }
        rows.back().tiles.push_back(
            tileOf(codes.value(static_cast<qsizetype>(i)), media[treatment.medium],
                   nameOf(treatment.feeding), spot,
                   squareWords(m_draft.plan.design, tray.block, tray.position), tray.isMoved));
    }
    return rows;
}

QString PlanView::layoutWords() const
{
    QStringList words{
        tr("Draw %1 · the same number draws the same places again.").arg(m_draft.plan.drawNumber)};
    const auto moved = std::count_if(m_draft.trays.begin(), m_draft.trays.end(),
                                     [](const PlannedTray& tray) { return tray.isMoved; });
    if (moved > 0) {
        words << tr("%n tray(s) moved by hand: chance did not place them.", nullptr,
                    static_cast<int>(moved));
    }
    words << tr("Press one tray and then another to change them about.");
    return words.join(' ');
}

void PlanView::showSupplies()
{
    const auto preparation = m_journal.trials().preparation(m_draft);
    m_preparation = preparation.value_or(Preparation());
    std::vector<TextRow> rows;
    for (const Supply& supply : m_preparation.supplies) {
        TextRow row;
        row.cells = {
            nameOf(supply), supplyText(supply.kind, supply.needed, units()),
            supply.inStock ? supplyText(supply.kind, *supply.inStock, units()) : tr("not kept"),
            supply.cost ? moneyText(*supply.cost, QString::fromStdString(m_preparation.currency))
                        : tr("no price")};
        row.isWarned = supply.isShort();
        rows.push_back(row);
    }
    m_supplies->show({tr("Item"), tr("Needed"), tr("In stock"), tr("Cost")}, rows);
    m_supplyTable->horizontalHeader()->setSectionResizeMode(0, QHeaderView::Stretch);
    fitHeight(*m_supplyTable);
    QStringList words;
    if (!preparation) {
        words << sentence(preparation.error());
    } else {
        words << tr("%1 places are free at that time; %2 are needed.")
                     .arg(m_preparation.placesFree)
                     .arg(m_draft.count());
        words << tr("In all about %1, work and light not counted.")
                     .arg(moneyText(m_preparation.cost,
                                    QString::fromStdString(m_preparation.currency)));
    }
    m_supplyWords->setText(words.join(' '));
}

void PlanView::showFairness(const std::vector<Finding>& findings)
{
    std::map<MediumId, QString> names;
    for (const Medium& each : m_journal.media().all(Listed::All).value_or(std::vector<Medium>())) {
        names.emplace(each.id, QString::fromStdString(each.name));
    }
    std::map<MediumId, QString> compared; // by id, as the findings number them
    for (const Treatment& each : m_draft.treatments) {
        compared.emplace(each.medium, names[each.medium]);
    }
    QStringList media;
    for (const auto& [id, name] : compared) {
        media << name;
    }
    QStringList words = fairnessWords(findings, media);
    const QStringList advice = adviceWords(suggestionsFor(findings));
    if (!words.isEmpty() && !advice.isEmpty()) {
        words << tr("For a fair trial: %1.").arg(advice.join("; "));
    }
    m_fairnessWords->setText(words.join('\n'));
    m_fairness->setVisible(!words.isEmpty());
}

} // namespace plumule::ui
