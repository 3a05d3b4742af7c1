#include "ui/variety/variety_part.h"

#include "core/journal/variety/variety_entries.h"
#include "ui/variety/protocol_editor.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/master_detail.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QCheckBox>
#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {

VarietyPart::VarietyPart(Journal& journal, Services services, QWidget* parent)
    : RecordPart(journal, services, tr("New variety"), parent)
{
    buildForm();
}

QString VarietyPart::name() const
{
    return tr("Varieties");
}

bool VarietyPart::concerns(Concept about) const
{
    return about == Concept::Variety || about == Concept::Room;
}

void VarietyPart::buildForm()
{
    m_name = new QLineEdit;
    m_name->setObjectName("varietyName");
    m_prefix = new QLineEdit;
    m_prefix->setObjectName("varietyPrefix");
    m_prefix->setMaxLength(4);
    m_seed = new NumberField;
    m_seed->setObjectName("varietySeed");
    m_source = new QLineEdit;
    m_note = new QLineEdit;
    m_retired = new QCheckBox(tr("no longer sown"));
    m_retired->setObjectName("varietyRetired");
    QFormLayout* form = m_records->form();
    form->addRow(tr("Name"), m_name);
    form->addRow(tr("Letters of its codes"), m_prefix);
    form->addRow(tr("Seed a tray"), m_seed);
    form->addRow(tr("Source of the values"), m_source);
    form->addRow(tr("Note"), m_note);
    form->addRow(QString(), m_retired);
    m_protocol = new ProtocolEditor;
    m_records->record()->addWidget(label(tr("Protocol, stage by stage"), "heading"));
    m_records->record()->addWidget(m_protocol);
}

void VarietyPart::reload()
{
    std::vector<MasterDetail::Item> items;
    for (const Variety& each :
         journal().varieties().all(Listed::All).value_or(std::vector<Variety>())) {
        items.push_back(
            {each.id.value,
             QString::fromStdString(each.name) + (each.isRetired ? tr(" (no longer)") : QString()),
             {}});
    }
    m_records->setItems(items);
    if (m_records->chosen() != 0) {
        const auto now = journal().varieties().protocol(VarietyId{m_records->chosen()});
        // What is being typed stays, unless the record itself changed.
        if (now && (m_shown != *now || m_shownIn != room().units)) {
            show(m_records->chosen());
        }
    }
}

void VarietyPart::show(qint64 id)
{
    const auto protocol =
        id == 0 ? Result<Protocol>(Protocol()) : journal().varieties().protocol(VarietyId{id});
    if (!protocol) {
        services().messages.refuse(sentence(protocol.error()));
        return;
    }
    m_shown = *protocol;
    m_shownIn = room().units;
    const Variety& variety = protocol->variety;
    m_name->setText(QString::fromStdString(variety.name));
    m_prefix->setText(QString::fromStdString(variety.codePrefix));
    showMass(*m_seed, variety.seedPerTray, m_shownIn);
    m_source->setText(QString::fromStdString(variety.source));
    m_note->setText(QString::fromStdString(variety.note));
    m_retired->setChecked(variety.isRetired);
    m_protocol->show(protocol->stages, m_shownIn);
    settleForm();
    if (id == 0) {
        m_name->setFocus();
    }
}

bool VarietyPart::save()
{
    Protocol made;
    const auto seed = massIn(*m_seed, m_shownIn);
    const auto stages = m_protocol->stages();
    if (!seed || !stages) {
        m_seed->markWrong(!seed);
        services().messages.refuse(sentence(seed ? stages.error() : seed.error()));
        return false;
    }
    made.variety.id = VarietyId{m_records->chosen()};
    made.variety.name = m_name->text().trimmed().toStdString();
    made.variety.codePrefix = m_prefix->text().trimmed().toUpper().toStdString();
    made.variety.seedPerTray = *seed;
    made.variety.source = m_source->text().trimmed().toStdString();
    made.variety.note = m_note->text().trimmed().toStdString();
    made.variety.isRetired = m_retired->isChecked();
    made.stages = *stages;
    const auto saved = journal().varieties().save(made);
    if (!settle(saved, tr("Saved %1.").arg(m_name->text()))) {
        return false;
    }
    m_shown = *saved;
    m_records->choose(saved->variety.id.value);
    settleForm();
    return true;
}

void VarietyPart::remove()
{
    services().ask.confirm(
        this, tr("Remove a variety"), tr("Remove %1 and its protocol?").arg(m_name->text()),
        tr("Remove"), [this] {
            const auto done = journal().varieties().remove(VarietyId{m_records->chosen()});
            if (!done && done.error().kind == ErrorKind::InUse) {
                services().messages.refuse(
                    tr("Trays or seed lots hang on it. Mark it as no longer sown instead."));
                return;
            }
            if (settle(done, tr("Removed %1.").arg(m_name->text()))) {
                m_records->choose(0);
                show(0);
            }
        });
}

} // namespace plumule::ui

#include "moc_variety_part.cpp"
