#include "ui/widget/saved_file.h"

#include "core/base/file_reason.h"
#include "core/base/whole_file.h"

#include <QBuffer>

namespace plumule::ui {

Done saveFile(const QString& path, const std::function<bool(QIODevice&)>& write)
{
    QBuffer content;
    content.open(QIODevice::WriteOnly);
    if (!write(content)) {
        return fail(ErrorKind::NotWritable, FileReason::NotWritten, path.toStdString());
    }
    const QByteArray& bytes = content.data();
    return writeWhole(path.toStdString(),
                      {bytes.constData(), static_cast<std::size_t>(bytes.size())});
}

} // namespace plumule::ui
