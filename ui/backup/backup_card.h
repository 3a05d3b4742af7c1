#pragma once

#include "core/backup/backup_store.h"
#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QComboBox;

namespace plumule::ui {

// The backups of the journal: when the last one was made, where they are kept, what each holds, and
// the way back to one.
class BackupCard : public Card
{
    Q_OBJECT

public:
    BackupCard(Journal& journal, const Services& services, QWidget* parent = nullptr);

    // Looks at the folder again.
    void reload();

Q_SIGNALS:
    // One was brought back under this path, to be opened.
    void journalAsked(const QString& path);

private:
    void build();
    [[nodiscard]] BackupStore store() const;
    [[nodiscard]] std::optional<Backup> chosen() const;
    [[nodiscard]] QString copiesText() const;
    void chooseFolder();
    void keepBeside();
    void makeNow();
    void takeAlong();
    void look();
    void bringBack();
    void bringBackTo(const Backup& backup, const QString& target);

    Journal& m_journal;
    Services m_services;
    QLabel* m_state = nullptr;
    QLabel* m_folder = nullptr;
    QLabel* m_copies = nullptr;
    QLabel* m_content = nullptr;
    QComboBox* m_list = nullptr;
    QPushButton* m_beside = nullptr;
    QWidget* m_way = nullptr; // what needs a backup to be there
    std::vector<Backup> m_backups;
};

} // namespace plumule::ui
