#include "ui/climate/lamp_dialog.h"

#include "core/journal/climate/climate_entries.h"
#include "core/journal/room/room_entries.h"
#include "ui/climate/climate_text.h"
#include "ui/page/undoing.h"
#include "ui/widget/amount_field.h"
#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QFormLayout>
#include <QVBoxLayout>

namespace plumule::ui {

LampDialog::LampDialog(Journal& journal, Services services, QWidget* parent)
    : FormDialog(services.ask, "lampDialog", tr("Light under the lamps"), parent)
    , m_journal(journal)
    , m_services(services)
{
    wish({scaled(460), scaled(520)});
    auto* words =
        label(tr("Measured at the height of the leaves, in the middle of the shelf. Times "
                 "the hours that the lamps burn it gives a day's light."),
              "muted");
    words->setWordWrap(true);
    body()->addWidget(words);
    buildFields();
    addCancel();
    auto* keep = addButton(tr("Save"), "lampSave", "primary");
    connect(keep, &QPushButton::clicked, this, &LampDialog::save);
    panel()->settle();
}

void LampDialog::buildFields()
{
    const auto layout = m_journal.room().layout();
    const auto known = m_journal.climate().lampLight();
    if (!layout || !known) {
        refuse(sentence(layout ? known.error() : layout.error()));
        return;
    }
    auto* form = fieldForm();
    for (const Shelf& shelf : layout->shelves) {
        const auto found = known->find(shelf.id);
        ShelfField field{shelf.id,
                         found == known->end() ? std::nullopt : std::optional(found->second),
                         new NumberField(QStringLiteral("µmol/m²/s"))};
        field.ppfd->setObjectName(QStringLiteral("ppfd%1").arg(shelf.id.value));
        field.ppfd->setRange(0, kMostPpfd);
        field.ppfd->setNumber(field.before, 0);
        form->addRow(placeName({{}, {}, {}, shelf.id, {}}, *layout), field.ppfd);
        m_fields.push_back(field);
    }
    body()->addLayout(form);
    body()->addStretch(1);
}

void LampDialog::save()
{
    std::map<ShelfId, std::optional<double>> changed;
    for (const ShelfField& field : m_fields) {
        const auto number = field.ppfd->number();
        field.ppfd->markWrong(!number);
        if (!number) {
            refuse(tr("Please check the light of the marked shelf."));
            return;
        }
        if (*number != field.before) {
            changed[field.shelf] = *number;
        }
    }
    if (const Done done = m_journal.climate().setLampLight(changed); !done) {
        refuse(sentence(done.error()));
        return;
    }
    tellLast(m_journal, m_services);
    accept();
}

} // namespace plumule::ui

#include "moc_lamp_dialog.cpp"
