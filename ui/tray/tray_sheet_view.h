#pragma once

#include "ui/page/page.h"
#include "ui/widget/widgets.h"

class QBoxLayout;
class QComboBox;
class QLineEdit;

namespace plumule::ui {

class ChartView;
class ClimateCard;
class FlowLayout;
class NumberField;
class StageStrip;

// One tray's sheet: stages, heights, weights, waterings, cost, notes and photographs, and what can
// be done with the tray.
class TraySheetView : public QWidget
{
    Q_OBJECT

public:
    TraySheetView(Journal& journal, Services services, QWidget* parent = nullptr);

    // What was typed about the tray shown before is kept as that tray's.
    void show(TrayId tray);
    void reload();
    // Whether a note or a height was typed that isn't kept.
    [[nodiscard]] bool hasTyped() const;

Q_SIGNALS:
    void left(); // back to the list
    void weighingAsked(const QString& code);
    void wateringAsked(plumule::TrayId tray);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildHead();
    Card* buildStages();
    Card* buildHeights();
    Card* buildWeights();
    Card* buildWaterings();
    Card* buildCost();
    Card* buildNotes();
    Card* buildPhotos();
    void buildActions();

    [[nodiscard]] QStringList headWords(const TraySheet& sheet) const;
    void showHead(const TraySheet& sheet);
    QWidget* stageRow(const StageSpan& span);
    void showStages(const TraySheet& sheet);
    void showHeights(const TraySheet& sheet);
    void showWeights(const TraySheet& sheet);
    void showWaterings(const TraySheet& sheet);
    void showCost(const TraySheet& sheet);
    [[nodiscard]] static QString lackText(const TraySheet& sheet);
    void showNotes(const TraySheet& sheet);
    void showPhotos(const TraySheet& sheet);

    void moveOn();
    void notYet();
    void discard();
    void setAside();
    void correctStart(Stage stage);
    void moveToPlace();
    void addHeight();
    void addNote();
    void addPhoto();
    void keepTyped();
    template <class T>
    bool done(const Result<T>& result);
    [[nodiscard]] Moment now() const { return m_journal.clock().now(); }

    Journal& m_journal;
    Services m_services;
    TrayId m_tray;
    std::optional<TraySheet> m_sheet;
    UnitText m_units;
    PageHead* m_head = nullptr;
    QPushButton* m_moveOn = nullptr;
    QPushButton* m_notYet = nullptr;
    QPushButton* m_weigh = nullptr;
    QPushButton* m_discard = nullptr;
    QPushButton* m_setAside = nullptr;
    QPushButton* m_move = nullptr;
    QPushButton* m_giveWater = nullptr;
    QBoxLayout* m_columns = nullptr;
    StageStrip* m_strip = nullptr;
    QVBoxLayout* m_stageRows = nullptr;
    ChartView* m_heightChart = nullptr;
    ClimateCard* m_climate = nullptr;
    NumberField* m_height = nullptr;
    QComboBox* m_readFrom = nullptr;
    QLabel* m_heightWords = nullptr;
    QVBoxLayout* m_weightRows = nullptr;
    QVBoxLayout* m_wateringRows = nullptr;
    QVBoxLayout* m_costRows = nullptr;
    QVBoxLayout* m_noteRows = nullptr;
    QLineEdit* m_note = nullptr;
    FlowLayout* m_photoRow = nullptr;
};

} // namespace plumule::ui
