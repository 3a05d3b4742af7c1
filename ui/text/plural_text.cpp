#include "ui/text/plural_text.h"

#include <QCoreApplication>
#include <QTranslator>

namespace plumule::ui {
namespace {

class EnglishPlurals : public QTranslator
{
public:
    using QTranslator::QTranslator;

    [[nodiscard]] bool isEmpty() const override { return false; }
    [[nodiscard]] QString translate(const char*, const char* source, const char*,
                                    int count) const override
    {
        const QString text = QString::fromUtf8(source);
        if (count < 0 || !(text.contains("(s)") || text.contains("(ies)"))) {
            return {};
        }
        return QString(text)
            .replace("(s)", count == 1 ? "" : "s")
            .replace("(ies)", count == 1 ? "y" : "ies");
    }
};

} // namespace

void installEnglishPlurals(QCoreApplication& application)
{
    QCoreApplication::installTranslator(new EnglishPlurals(&application));
}

} // namespace plumule::ui
