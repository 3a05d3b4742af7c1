#include "ui/page/ask.h"

#include "ui/widget/theme.h"

#include <QDialogButtonBox>
#include <QFileDialog>
#include <QFileInfo>
#include <QInputDialog>
#include <QLabel>
#include <QMessageBox>
#include <QPushButton>

namespace plumule::ui {

void DialogAsk::confirm(QWidget* parent, const QString& title, const QString& question,
                        const QString& action, Yes yes)
{
    auto* box = new QMessageBox(parent);
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->setWindowTitle(title);
    box->setTextFormat(Qt::PlainText);
    box->setText(question);
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
    auto* box = new QMessageBox(parent);
    box->setAttribute(Qt::WA_DeleteOnClose);
    box->setWindowTitle(tr("Not saved"));
    box->setTextFormat(Qt::PlainText);
    box->setText(question);
    QPushButton* saves = box->addButton(tr("Save"), QMessageBox::AcceptRole);
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
    auto* dialog = new QInputDialog(parent);
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setWindowTitle(title);
    dialog->setLabelText(label);
    dialog->findChild<QLabel*>()->setTextFormat(Qt::PlainText);
    dialog->setTextValue(preset);
    dialog->resize(scaled(420), dialog->sizeHint().height()); // its title is to be read
    QObject::connect(dialog, &QInputDialog::textValueSelected, dialog,
                     [answered = std::move(answered)](const QString& text) {
                         if (!text.trimmed().isEmpty()) {
                             answered(text.trimmed());
                         }
                     });
    dialog->open();
}

namespace {

void openFileDialog(QFileDialog* dialog, const QString& filter, Ask::Answered answered)
{
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    dialog->setNameFilter(filter);
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
