#include "ui/page/record_part.h"

#include "ui/widget/form_panel.h"
#include "ui/widget/master_detail.h"

#include <QVBoxLayout>

namespace plumule::ui {

RecordPart::RecordPart(Journal& journal, Services services, const QString& newName, QWidget* parent)
    : SetupPart(journal, services, parent)
{
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    m_records = new MasterDetail(newName);
    column->addWidget(m_records);
    m_records->setGuard([this](const MasterDetail::Go& go) { leaveThen(go); });
    connect(m_records, &MasterDetail::chosenByHand, this, [this](qint64 id) {
        forget();
        show(id);
    });
    connect(m_records, &MasterDetail::saveAsked, this, [this] { save(); });
    connect(m_records, &MasterDetail::removeAsked, this, [this] { remove(); });
}

bool RecordPart::hasUnsaved() const
{
    return m_records->panel()->isChanged();
}

void RecordPart::settleForm()
{
    m_records->panel()->settle();
}

} // namespace plumule::ui

#include "moc_record_part.cpp"
