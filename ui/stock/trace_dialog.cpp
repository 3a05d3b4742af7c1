#include "ui/stock/trace_dialog.h"

#include "core/journal/medium/medium_entries.h"
#include "core/journal/stock/stock_entries.h"
#include "core/journal/variety/variety_entries.h"
#include "core/stock/stock_rules.h"
#include "ui/text/text.h"
#include "ui/widget/choice_box.h"
#include "ui/widget/date_field.h"
#include "ui/widget/widgets.h"

#include <QComboBox>
#include <QHBoxLayout>
#include <QPushButton>
#include <QVBoxLayout>

#include <map>

namespace plumule::ui {
namespace {

enum Kind
{
    OfLot,
    OfPiece,
    OfMix,
    OfPerson
};

} // namespace

TraceDialog::TraceDialog(Journal& journal, Services services, QWidget* parent)
    : FormDialog(services.ask, "traceDialog", tr("Follow where it went"), parent)
    , m_journal(journal)
    , m_kind(new Segmented({tr("Seed lot"), tr("Piece"), tr("Mix"), tr("Person")}))
    , m_list(new QComboBox)
    , m_days(new QWidget)
    , m_from(new DateField("traceFrom"))
    , m_to(new DateField("traceTo"))
{
    setAttribute(Qt::WA_DeleteOnClose);
    leaveFreely();
    m_kind->setObjectName("traceKind");
    m_list->setObjectName("traceList");
    m_list->setAccessibleName(tr("Which one"));
    const Date today = journal.clock().today();
    m_from->setAccessibleName(tr("From"));
    m_from->setDate(today - (kRateDays - 1));
    m_to->setAccessibleName(tr("To"));
    m_to->setDate(today);
    auto* days = new QHBoxLayout(m_days);
    days->setContentsMargins(0, 0, 0, 0);
    days->addWidget(label(tr("from")));
    days->addWidget(m_from, 1);
    days->addWidget(label(tr("to")));
    days->addWidget(m_to, 1);
    body()->addWidget(m_kind);
    body()->addWidget(m_list);
    body()->addWidget(m_days);
    body()->addStretch(1);
    addCancel();
    connect(addButton(tr("Follow it"), "traceGo", "primary"), &QPushButton::clicked, this,
            &TraceDialog::take);
    connect(m_kind, &Segmented::chosenByHand, this, &TraceDialog::fillList);
    m_kind->choose(OfLot);
    fillList();
}

void TraceDialog::fillLots()
{
    std::map<VarietyId, QString> names;
    for (const Variety& each :
         m_journal.varieties().all(Listed::All).value_or(std::vector<Variety>())) {
        names[each.id] = QString::fromStdString(each.name);
    }
    for (const SeedLotStock& each : m_journal.varieties()
                                        .lots(std::nullopt, Listed::All)
                                        .value_or(std::vector<SeedLotStock>())) {
        addChoice(*m_list,
                  names[each.lot.variety] + QStringLiteral(", ") +
                      QString::fromStdString(each.lot.lotNumber),
                  each.lot.id);
    }
}

void TraceDialog::fillPieces()
{
    std::map<MediumId, QString> names;
    for (const Medium& each : m_journal.media().all(Listed::All).value_or(std::vector<Medium>())) {
        names[each.id] = QString::fromStdString(each.name);
    }
    for (const PieceRecord& each :
         m_journal.media().pieces(std::nullopt, Listed::All).value_or(std::vector<PieceRecord>())) {
        addChoice(*m_list,
                  names[each.piece.medium] + QLatin1Char(' ') + QString::number(each.piece.number),
                  each.piece.id);
    }
}

void TraceDialog::fillList()
{
    m_list->clear();
    m_days->setVisible(m_kind->chosen() == OfMix);
    switch (m_kind->chosen()) {
    case OfLot:
        return fillLots();
    case OfPiece:
        return fillPieces();
    case OfMix:
        for (const WaterKind water : {WaterKind::Nutrient, WaterKind::PhSet, WaterKind::Plain}) {
            addChoice(*m_list, nameOf(water), water);
        }
        return;
    default:
        for (const std::string& name :
             m_journal.stock().people().value_or(std::vector<std::string>())) {
            m_list->addItem(QString::fromStdString(name));
        }
    }
}

void TraceDialog::take()
{
    if (m_list->count() == 0) {
        refuse(tr("Nothing of that kind is in the journal yet."));
        return;
    }
    TraceFrom from;
    switch (m_kind->chosen()) {
    case OfLot:
        from = chosenOf<SeedLotId>(*m_list);
        break;
    case OfPiece:
        from = chosenOf<PieceId>(*m_list);
        break;
    case OfMix: {
        const bool areDays = m_from->requireDate();
        if (!m_to->requireDate() || !areDays) {
            refuse(howToWriteADay());
            return;
        }
        from = MixSpan{chosenOf<WaterKind>(*m_list), *m_from->date(), *m_to->date()};
        break;
    }
    default:
        from = Person{m_list->currentText().toStdString()};
    }
    Q_EMIT chosen(from);
    accept();
}

} // namespace plumule::ui

#include "moc_trace_dialog.cpp"
