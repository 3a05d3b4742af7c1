#include "ui/page/record_dialog.h"

#include "ui/page/undoing.h"
#include "ui/text/text.h"

#include <QPushButton>

namespace plumule::ui {

RecordDialog::RecordDialog(Journal& journal, Services services, const char* name,
                           const QString& title, QWidget* parent)
    : FormDialog(services.ask, name, title, parent)
    , m_journal(journal)
    , m_services(services)
{}

void RecordDialog::addRemove(const char* name, const QString& title, const std::string& whom,
                             std::function<Done()> remove)
{
    const auto removeNow = [this, remove = std::move(remove)] {
        if (const Done removed = remove(); !removed) {
            refuse(sentence(removed.error()));
            return;
        }
        tellLast(m_journal, m_services);
        accept();
    };
    connect(addLeftButton(tr("Remove"), name, "danger"), &QPushButton::clicked, this, [=, this] {
        m_services.ask.confirm(this, title, tr("Remove %1?").arg(QString::fromStdString(whom)),
                               tr("Remove"), removeNow);
    });
}

void RecordDialog::addSave(const char* name, const QString& text)
{
    addCancel();
    connect(addButton(text, name, "primary"), &QPushButton::clicked, this, [this] {
        if (const auto said = save()) {
            tellDone(m_journal, m_services, *said);
            accept();
        }
    });
}

} // namespace plumule::ui

#include "moc_record_dialog.cpp"
