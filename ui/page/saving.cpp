#include "ui/page/saving.h"

#include <QCoreApplication>

namespace plumule::ui {

void saveAs(QWidget* parent, const Services& services, const QString& title, const QString& preset,
            const QString& filter, std::function<Done(const QString&)> write)
{
    services.ask.fileToSave(
        parent, title, preset, filter,
        [&messages = services.messages, write = std::move(write)](const QString& path) {
            if (const Done saved = write(path); !saved) {
                messages.refuse(sentence(saved.error()));
            } else {
                messages.tell(QCoreApplication::translate("Saving", "Saved %1.").arg(path));
            }
        });
}

} // namespace plumule::ui
