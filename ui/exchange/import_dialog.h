#pragma once

#include "core/exchange/tray_import.h"
#include "ui/page/form_dialog.h"
#include "ui/page/latest.h"
#include "ui/page/page.h"

#include <memory>

class QCheckBox;
class QProgressBar;

namespace plumule::ui {

class ImportForm;

// Shows what a table would bring in before anything is written: how it is read, which can be
// changed; rows, new names, columns left out, every fault with its line, and what looks wrong and
// must be looked at first. It is read off the window's thread and anew after each change, and
// stored there too, all or nothing until it is stopped. The import is one step and is undone as
// one; how a table was read is remembered by its header.
class ImportDialog : public FormDialog
{
    Q_OBJECT

public:
    ImportDialog(Journal& journal, Services services, const QString& file,
                 QWidget* parent = nullptr);
    ~ImportDialog() override;

    // Asks for a file and shows the dialog on it.
    static void begin(Journal& journal, Services services, QWidget* parent);

    // Stops what is being stored, and closes once the journal has let go of it.
    void reject() override;

private:
    using Preview = std::shared_ptr<const ImportPreview>;

    void buildWaiting();
    void buildButtons();
    void read();
    void take(const Result<Preview>& preview);
    void showResult();
    void runImport();
    void showStoring();
    void takeStored(const Result<std::int64_t>& stored);
    [[nodiscard]] bool takeRemembered(const ImportPreview& preview);

    Journal& m_journal;
    Services m_services;
    QString m_file;
    Preview m_preview;
    ImportForm* m_form = nullptr;
    QProgressBar* m_bar = nullptr;
    QWidget* m_result = nullptr;
    QPushButton* m_import = nullptr;
    QPushButton* m_leave = nullptr;
    QCheckBox* m_areRight = nullptr; // where there are doubts
    std::shared_ptr<std::stop_source> m_stop;
    Latest m_latest; // of reading
    bool m_isFirst = true;
    bool m_isStoring = false;
};

} // namespace plumule::ui
