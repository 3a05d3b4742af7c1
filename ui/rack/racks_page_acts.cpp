// Part of ui/rack/racks_page.h: what is done from it.
#include "ui/rack/racks_page.h"

#include "core/journal/rack/rack_entries.h"

#include "ui/page/sheets.h"
#include "ui/page/undoing.h"
#include "ui/rack/arrange_dialog.h"
#include "ui/rack/rack_sheet.h"
#include "ui/rack/rack_view.h"
#include "ui/tray/sow_dialog.h"
#include "ui/widget/key_button.h"
#include "ui/widget/lone_key.h"

#include <QKeyEvent>

namespace plumule::ui {

// What is refused stays carried, so that it can land elsewhere.
void RacksPage::move(const std::vector<TrayMove>& moves)
{
    if (!accept(journal().racks().move(moves, journal().clock().now()))) {
        return;
    }
    m_view->leave();
    tellLast();
    readAgain();
}

void RacksPage::keyPressEvent(QKeyEvent* event)
{
    if (!m_letter->hear(*event)) {
        Page::keyPressEvent(event);
    }
}

void RacksPage::pressLetter(int key)
{
    switch (key) {
    case Qt::Key_X:
        return m_view->swap();
    case Qt::Key_P:
        return offerSheet();
    case Qt::Key_S:
        return sow();
    case Qt::Key_U:
        return undoLast();
    default:
        return;
    }
}

void RacksPage::sow()
{
    auto* dialog = new SowDialog(journal(), services(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &SowDialog::sown, this, [this] { tellLast(); });
    dialog->open();
}

void RacksPage::rearrange()
{
    auto* dialog = new ArrangeDialog(journal(), services(), this);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->open();
}

bool RacksPage::print()
{
    offerSheet();
    return true;
}

void RacksPage::offerSheet()
{
    ui::offerSheet(
        *this, *m_print, [this] { printSheet(); }, [this] { saveSheet(); });
}

void RacksPage::saveSheet()
{
    const QString preset =
        QStringLiteral("racks %1.pdf").arg(QString::fromStdString(toIso(m_racks.today)));
    services().ask.fileToSave(
        this, tr("Save the sheet"), preset, tr("PDF (*.pdf)"), [this](const QString& path) {
            const Done saved = writeRackSheet(m_racks, m_room, path);
            if (saved) {
                services().messages.tell(tr("The sheet was saved as %1.").arg(path));
            } else {
                services().messages.refuse(sentence(saved.error()));
            }
        });
}

void RacksPage::printSheet()
{
    sendToPrinter(this, services(), [this](QPagedPaintDevice& printer) {
        return printRackSheet(m_racks, m_room, printer);
    });
}

} // namespace plumule::ui
