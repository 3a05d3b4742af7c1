#pragma once

#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

namespace plumule::ui {

// A dialog of one record of the journal. Once it is saved or removed that is said, with the way
// back, and the dialog closes; what is refused is said above the buttons.
class RecordDialog : public FormDialog
{
    Q_OBJECT

protected:
    RecordDialog(Journal& journal, Services services, const char* name, const QString& title,
                 QWidget* parent);

    [[nodiscard]] Journal& journal() const { return m_journal; }

    // Asks before; `title` is the question's.
    void addRemove(const char* name, const QString& title, const std::string& whom,
                   std::function<Done()> remove);
    // Cancel, and what Enter presses.
    void addSave(const char* name, const QString& text);
    // What is to be said of what was saved; none where it was refused, with why.
    [[nodiscard]] virtual std::optional<QString> save() = 0;

private:
    Journal& m_journal;
    Services m_services;
};

} // namespace plumule::ui
