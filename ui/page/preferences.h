#pragma once

#include <QString>
#include <QVariant>

#include <map>
#include <memory>

class QSettings;

namespace plumule::ui {

// What one computer remembers between starts; nothing of the journal is in it.
enum class Preference
{
    LastJournal,  // path
    Look,         // "light" or "dark"
    FontScale,    // 0.8 to 2
    ScaleUnit,    // "g" or "oz"; empty: as the room's
    LastTare,     // mg, of the bowl on the scale
    WindowPlace,  // as QWidget::saveGeometry()
    LabelPaper,   // what labels are printed on, one line; empty: the standard sheet
    ScanBefore,   // what a label scanner sends before each code
    ScanAfter,    // and after it, but for Enter
    BackupFolder, // path; empty: beside the journal
    SmallVolumes  // "fl_oz", "tsp" or "ml": US amounts under a cup
};

class Preferences
{
public:
    virtual ~Preferences() = default;
    // The default of the table where nothing was set.
    [[nodiscard]] QVariant get(Preference which) const;
    virtual void set(Preference which, const QVariant& value) = 0;

protected:
    [[nodiscard]] static QString keyOf(Preference which);
    [[nodiscard]] virtual QVariant stored(const QString& key) const = 0;
};

// In the user's settings folder.
class StoredPreferences : public Preferences
{
public:
    StoredPreferences();
    ~StoredPreferences() override;
    void set(Preference which, const QVariant& value) override;
    // That the settings stand in.
    [[nodiscard]] QString folder() const;

protected:
    [[nodiscard]] QVariant stored(const QString& key) const override;

private:
    std::unique_ptr<QSettings> m_settings;
};

// Forgotten with the program: for tests and for pictures.
class PassingPreferences : public Preferences
{
public:
    void set(Preference which, const QVariant& value) override;

protected:
    [[nodiscard]] QVariant stored(const QString& key) const override;

private:
    std::map<QString, QVariant> m_values;
};

} // namespace plumule::ui
