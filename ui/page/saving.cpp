#include "ui/page/saving.h"

#include <QCoreApplication>

namespace plumule::ui {

void saveAs(QWidget* parent, const Services& services, const QString& title, const QString& preset,
            const QString& filter, std::function<bool(const QString&)> write)
{
    services.ask.fileToSave(
        parent, title, preset, filter,
        [&messages = services.messages, write = std::move(write)](const QString& path) {
            if (write(path)) {
                messages.tell(QCoreApplication::translate("Saving", "Saved %1.").arg(path));
            } else {
                messages.refuse(sentence({ErrorKind::NotWritable, "file", path.toStdString()}));
            }
        });
}

} // namespace plumule::ui
