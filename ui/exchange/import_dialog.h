#pragma once

#include "core/exchange/tray_import.h"
#include "ui/page/form_dialog.h"
#include "ui/page/page.h"

class QCheckBox;

namespace plumule::ui {

// Shows what a table of trays would bring in before anything is written: rows, new names, columns
// left out, every fault with its line, and what looks wrong and must be looked at first. The import
// is one step and is undone as one.
class ImportDialog : public FormDialog
{
    Q_OBJECT

public:
    ImportDialog(Journal& journal, Services services, const QString& file,
                 QWidget* parent = nullptr);

    // Asks for a file and shows the dialog on it.
    static void begin(Journal& journal, Services services, QWidget* parent);

private:
    void buildSummary();
    void buildDoubts();
    void buildRows();
    void buildFaults();
    void buildButtons();
    void runImport();

    Journal& m_journal;
    Services m_services;
    QString m_file;
    ImportPreview m_preview;
    QCheckBox* m_areRight = nullptr; // where there are doubts
};

} // namespace plumule::ui
