#pragma once

#include <QDialog>

namespace plumule::ui {

// Says what is being done while the window may do nothing else. It is closed by whoever opened it,
// not by hand.
class WaitDialog : public QDialog
{
    Q_OBJECT

public:
    explicit WaitDialog(const QString& doing, QWidget* parent);

    void reject() override {}
    // It is done: closes and goes.
    void finish();
};

} // namespace plumule::ui
