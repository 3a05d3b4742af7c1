#pragma once

#include "ui/page/page.h"

#include <QDialog>

namespace plumule::ui {

class RoomPart;

// Racks, shelves, places and their light, by the set-up's own form; the measured light is asked for
// from here too. What is done is said at its foot.
class ArrangeDialog : public QDialog
{
    Q_OBJECT

public:
    ArrangeDialog(Journal& journal, const Services& services, QWidget* parent = nullptr);
    ~ArrangeDialog() override;

    // Asks first where something typed is not saved.
    void reject() override;

private:
    QWidget* buildFoot();
    void measureLight();

    Journal& m_journal;
    MessageBar* m_messages = nullptr;
    Services m_services;
    RoomPart* m_part = nullptr;
    int m_listener = 0;
};

} // namespace plumule::ui
