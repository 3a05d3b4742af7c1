#pragma once

#include "ui/page/setup_part.h"

class QComboBox;
class QDoubleSpinBox;

namespace plumule::ui {

class BackupCard;

// The journal itself: where it is, backups, tables in and out, and how the program
// looks on this computer.
class JournalPart : public SetupPart
{
    Q_OBJECT

public:
    JournalPart(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;

Q_SIGNALS:
    void journalAsked(const QString& path);
    void lookAsked(const QString& look, double fontScale); // not stored yet

private:
    QWidget* buildFile();
    QWidget* buildBackups();
    QWidget* buildTables();
    QWidget* buildClimate();
    QWidget* buildLook();
    QWidget* buildScanner();
    void openAnother();
    void makeNew();
    void backUp();
    void check();
    void exportTrays();
    void exportAll();
    void saveLook();

    QComboBox* m_look = nullptr;
    QDoubleSpinBox* m_scale = nullptr;
    BackupCard* m_backups = nullptr;
};

} // namespace plumule::ui
