#include "ui/page/wait_dialog.h"

#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QProgressBar>
#include <QVBoxLayout>

namespace plumule::ui {

WaitDialog::WaitDialog(const QString& doing, QWidget* parent)
    : QDialog(parent)
{
    setObjectName("wait");
    setWindowTitle(tr("One moment"));
    setModal(true);
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(scaled(24), scaled(20), scaled(24), scaled(24));
    column->setSpacing(scaled(14));
    auto* words = label(doing, "strong");
    words->setWordWrap(true);
    auto* bar = new QProgressBar;
    bar->setRange(0, 0); // how long is not known
    bar->setTextVisible(false);
    bar->setAccessibleName(doing);
    column->addWidget(words);
    column->addWidget(bar);
    setMinimumWidth(scaled(360));
}

void WaitDialog::finish()
{
    accept();
    deleteLater();
}

} // namespace plumule::ui

#include "moc_wait_dialog.cpp"
