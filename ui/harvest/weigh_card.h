#pragma once

#include "core/harvest/harvest.h"
#include "core/harvest/scale_text.h"
#include "ui/text/text.h"
#include "ui/widget/widgets.h"

#include <QLineEdit>

#include <vector>

namespace plumule::ui {

class MarkerDot;

// The entry at the scale: which tray, what the scale says, the bowl's tare, the net. It holds what
// is typed and works out the net as it stands; what becomes of it is the page's.
class WeighCard : public Card
{
    Q_OBJECT

public:
    explicit WeighCard(QWidget* parent = nullptr);

    // Shows a tray that was found, and puts the focus on the weight.
    void showTray(const TrayAtScale& tray, bool isResidue);
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
    [[nodiscard]] MassUnit unit() const { return m_unit; }
    void setTare(Mass tare);
    // The bowls so far with the one that is typed now; the first text that is no weight as the
    // error.
    [[nodiscard]] Result<std::vector<BowlDraft>> bowls() const;
    // Shows bowls that were weighed before, to be corrected.
    void setBowls(const std::vector<Bowl>& bowls);
    [[nodiscard]] bool isLastCut() const;
    void setLastCut(bool isLast);

    // The line under the weight.
    void say(const QString& words, const char* role);
    void setRecordName(const QString& name);
    void focusCode();
    void focusWeight();

Q_SIGNALS:
    void codeEntered(const QString& code);
    void recordAsked();
    void edited(); // the weight, the tare or the bowls changed

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    QWidget* buildTop();
    QWidget* buildWeights();
    QWidget* buildFoot();
    void wireSignals();
    void enterWeight();
    void addBowl();
    void showNet();
    void showBowls();
    [[nodiscard]] QString massText(Mass mass) const;

    MassUnit m_unit = MassUnit::Gram;
    std::vector<BowlDraft> m_bowls; // set down before the one that is typed now
    QLineEdit* m_code = nullptr;
    QLabel* m_variety = nullptr;
    MarkerDot* m_marker = nullptr;
    QLabel* m_medium = nullptr;
    QLabel* m_trial = nullptr;
    QLineEdit* m_gross = nullptr;
    QLineEdit* m_tare = nullptr;
    QLabel* m_net = nullptr;
    QLabel* m_bowlWords = nullptr;
    QLabel* m_words = nullptr;
    QPushButton* m_addBowl = nullptr;
    QPushButton* m_again = nullptr;
    QPushButton* m_record = nullptr;
};

} // namespace plumule::ui
