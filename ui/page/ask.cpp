#include "ui/page/ask.h"

#include "ui/page/line_dialog.h"
#include "ui/widget/theme.h"

#include <QComboBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QHeaderView>
#include <QMessageBox>
#include <QPushButton>
#include <QScreen>
#include <QTreeView>

namespace plumule::ui {
namespace {

QMessageBox* questionBox(QWidget* parent, const QString& title, const QString& question)
{
    auto* box = new QMessageBox(parent);
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->setWindowTitle(title);
    box->setTextFormat(Qt::PlainText);
    box->setText(question);
    box->setContentsMargins(scaled(12), scaled(10), scaled(12), scaled(8));
    return box;
}

} // namespace

void DialogAsk::confirm(QWidget* parent, const QString& title, const QString& question,
                        const QString& action, Yes yes)
{
    QMessageBox* box = questionBox(parent, title, question);
    QPushButton* agree = box->addButton(action, QMessageBox::AcceptRole);
    box->setDefaultButton(box->addButton(QMessageBox::Cancel));
    QObject::connect(box, &QMessageBox::buttonClicked, box,
                     [agree, yes = std::move(yes)](QAbstractButton* pressed) {
                         if (pressed == agree) {
                             yes();
                         }
                     });
    box->open();
}

void DialogAsk::unsaved(QWidget* parent, const QString& question, Yes save, Yes leave)
{
    QMessageBox* box = questionBox(parent, tr("Not saved"), question);
    QPushButton* saves = box->addButton(tr("Save"), QMessageBox::AcceptRole);
    saves->setProperty("role", "primary");
    QPushButton* leaves = box->addButton(tr("Leave without saving"), QMessageBox::DestructiveRole);
    box->addButton(QMessageBox::Cancel);
    box->setDefaultButton(saves);
    QObject::connect(
        box, &QMessageBox::buttonClicked, box,
        [saves, leaves, save = std::move(save), leave = std::move(leave)](QAbstractButton* press) {
            if (press == saves) {
                save();
            } else if (press == leaves) {
                leave();
            }
        });
    box->open();
}

void DialogAsk::line(QWidget* parent, const QString& title, const QString& label,
                     const QString& preset, Answered answered)
{
    auto* dialog = new LineDialog(*this, title, label, preset, parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    QObject::connect(dialog, &LineDialog::answered, dialog,
                     [answered = std::move(answered)](const QString& text) { answered(text); });
    dialog->open();
}

namespace {

constexpr int kNameColumn = 0; // as in QFileSystemModel
constexpr int kSizeColumn = 1;
constexpr int kKindColumn = 2;
constexpr QSize kUsualFileDialog{820, 520};
constexpr QSize kAroundFileDialog{40, 80}; // what the desktop may take of the screen

// Qt's own dialog, which shows where the desktop lends none, at the size of the type: the folder's
// name and the files' days are read whole.
void giveRoom(QFileDialog& dialog)
{
    auto* files = dialog.findChild<QTreeView*>(QStringLiteral("treeView"));
    auto* folder = dialog.findChild<QComboBox*>(QStringLiteral("lookInCombo"));
    if (files == nullptr || folder == nullptr) {
        return;
    }
    files->hideColumn(kKindColumn); // names say it by their endings
    files->setColumnHidden(kSizeColumn, isTypeLarge());
    files->header()->setSectionResizeMode(QHeaderView::ResizeToContents);
    files->header()->setSectionResizeMode(kNameColumn, QHeaderView::Stretch);
    folder->setMinimumWidth(scaled(180));
    const QSize most = dialog.screen()->availableSize() - kAroundFileDialog;
    dialog.resize(
        QSize(scaled(kUsualFileDialog.width()), scaled(kUsualFileDialog.height())).boundedTo(most));
}

void openFileDialog(QFileDialog* dialog, const QString& filter, Ask::Answered answered)
{
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setNameFilter(filter);
    giveRoom(*dialog);
    QObject::connect(dialog, &QFileDialog::fileSelected, dialog,
                     [answered = std::move(answered)](const QString& path) { answered(path); });
    dialog->open();
}

} // namespace

void DialogAsk::fileToOpen(QWidget* parent, const QString& title, const QString& filter,
                           Answered answered)
{
    auto* dialog = new QFileDialog(parent, title);
    dialog->setFileMode(QFileDialog::ExistingFile);
    openFileDialog(dialog, filter, std::move(answered));
}

void DialogAsk::fileToSave(QWidget* parent, const QString& title, const QString& preset,
                           const QString& filter, Answered answered)
{
    auto* dialog = new QFileDialog(parent, title);
    dialog->setAcceptMode(QFileDialog::AcceptSave);
    // A name that is typed without its ending gets that of what is proposed.
    dialog->setDefaultSuffix(QFileInfo(preset).suffix());
    dialog->selectFile(preset);
    openFileDialog(dialog, filter, std::move(answered));
}

void DialogAsk::folder(QWidget* parent, const QString& title, Answered answered)
{
    auto* dialog = new QFileDialog(parent, title);
    dialog->setFileMode(QFileDialog::Directory);
    dialog->setOption(QFileDialog::ShowDirsOnly);
    openFileDialog(dialog, QString(), std::move(answered));
}

} // namespace plumule::ui
