#include "ui/page/preferences.h"

#include <QFileInfo>
#include <QSettings>

namespace plumule::ui {
namespace {

struct Row
{
    Preference which;
    const char* key;
    QVariant otherwise;
};

const std::vector<Row>& preferenceTable()
{
    static const std::vector<Row> rows = {
        {Preference::LastJournal, "journal/last", QString()},
        {Preference::Look, "look", QStringLiteral("light")},
        {Preference::FontScale, "fontScale", 1.0},
        {Preference::ScaleUnit, "scale/unit", QString()},
        {Preference::LastTare, "scale/tare", 0},
        {Preference::WindowPlace, "window/place", QByteArray()},
        {Preference::LabelPaper, "labels/paper", QString()},
        {Preference::ScanBefore, "scanner/before", QString()},
        {Preference::ScanAfter, "scanner/after", QString()},
        {Preference::BackupFolder, "backups/folder", QString()},
        {Preference::SmallVolumes, "smallVolumes", QStringLiteral("fl_oz")},
    };
    return rows;
}

const Row& rowOf(Preference which)
{
    for (const Row& row : preferenceTable()) {
        if (row.which == which) {
            return row;
        }
    }
    Q_UNREACHABLE();
}

} // namespace

QString Preferences::keyOf(Preference which)
{
    return QString::fromLatin1(rowOf(which).key);
}

QVariant Preferences::get(Preference which) const
{
    const QVariant value = stored(keyOf(which));
    return value.isValid() ? value : rowOf(which).otherwise;
}

StoredPreferences::StoredPreferences()
    : m_settings(std::make_unique<QSettings>(QStringLiteral("Plumule"), QStringLiteral("Plumule")))
{}

StoredPreferences::~StoredPreferences() = default;

void StoredPreferences::set(Preference which, const QVariant& value)
{
    m_settings->setValue(keyOf(which), value);
}

QString StoredPreferences::folder() const
{
    return QFileInfo(m_settings->fileName()).absolutePath();
}

QVariant StoredPreferences::stored(const QString& key) const
{
    return m_settings->value(key);
}

void PassingPreferences::set(Preference which, const QVariant& value)
{
    m_values[keyOf(which)] = value;
}

QVariant PassingPreferences::stored(const QString& key) const
{
    const auto found = m_values.find(key);
    return found == m_values.end() ? QVariant() : found->second;
}

} // namespace plumule::ui
