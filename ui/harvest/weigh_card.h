#pragma once

#include "core/harvest/weighing.h"
#include "ui/harvest/scale_field.h"
#include "ui/text/text.h"
#include "ui/widget/widgets.h"

#include <vector>

class QBoxLayout;

namespace plumule::ui {

class KeyButton;
class MarkerDot;
class WeighQuestion;

// The entry at the scale: which tray, what the scale says, the bowl's tare, the net. It holds what
// is typed and works out the net as it stands; what becomes of it is the page's.
class WeighCard : public Card
{
    Q_OBJECT

public:
    explicit WeighCard(QWidget* parent = nullptr);

    // Shows a tray that was found, and puts the focus on the weight.
    void showTray(const TrayAtScale& tray, Weighing what);
    // Empties the card for the next code.
    void showNoTray();
    // Puts a code in the field without looking it up.
    void setCode(const QString& code);
    [[nodiscard]] QString code() const;
    // As it was typed.
    [[nodiscard]] QString weightText() const;
    void setWeightText(const QString& text);
    // Bowls that were set down before the one that is typed now.
    [[nodiscard]] bool hasBowls() const { return !m_bowls.empty(); }

    void setUnit(MassUnit unit);
    [[nodiscard]] MassUnit unit() const { return m_gross->unit(); }
    void setTare(Mass tare);
    // The bowls so far with the one that is typed now; the first text that is no weight as the
    // error.
    [[nodiscard]] Result<std::vector<BowlDraft>> bowls() const;
    // Shows bowls that were weighed before, to be corrected: exact until they are typed over.
    void setBowls(const std::vector<Bowl>& bowls);
    // Puts another weight in place of one of bowls().
    void setGross(std::size_t bowl, Mass gross);
    // Takes one of bowls() out, to be weighed again.
    void clearBowl(std::size_t bowl);
    [[nodiscard]] bool isLastCut() const;
    void setLastCut(bool isLast);

    [[nodiscard]] WeighQuestion& question() const { return *m_question; }
    // Frames the weight while it is asked about, and lets nothing be recorded meanwhile.
    void setDoubted(bool isDoubted);
    // The line under the weight.
    void say(const QString& words, const char* role);
    void setRecordName(const QString& name);
    void focusCode();
    void focusWeight();
    // Whether gross, tare and net stand side by side, and the tray beside its code.
    void setWide(bool isWide);

Q_SIGNALS:
    void codeEntered(const QString& code);
    void recordAsked();
    void edited(); // the weight, the tare or the bowls changed

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildTop();
    QWidget* buildTrayWords();
    QWidget* buildWeights();
    QWidget* buildFoot();
    void wireSignals();
    void enterWeight();
    void addBowl();
    void showNet();
    void showBowls();
    void showAgain();
    void showTrayWords();
    void showPlace(const TrayAtScale& tray);

    std::vector<BowlDraft> m_bowls; // set down before the one that is typed now
    std::optional<TrayAtScale> m_tray;
    QLineEdit* m_code = nullptr;
    QBoxLayout* m_top = nullptr;
    QWidget* m_trayWords = nullptr;
    QLabel* m_variety = nullptr;
    MarkerDot* m_marker = nullptr;
    QLabel* m_medium = nullptr;
    QLabel* m_place = nullptr;
    QBoxLayout* m_weights = nullptr;
    ScaleField* m_gross = nullptr;
    ScaleField* m_tare = nullptr;
    QLabel* m_tareName = nullptr;
    QLabel* m_net = nullptr;
    WeighQuestion* m_question = nullptr;
    QLabel* m_words = nullptr;
    QLabel* m_bowlWords = nullptr;
    QLabel* m_againWords = nullptr;
    KeyButton* m_addBowl = nullptr;
    KeyButton* m_again = nullptr;
    KeyButton* m_record = nullptr;
};

} // namespace plumule::ui
