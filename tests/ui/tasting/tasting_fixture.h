#pragma once

#include "core/journal/medium/medium_entries.h"
#include "core/journal/tasting/tasting_entries.h"
#include "core/journal/trial/trial_entries.h"
#include "tests/support/told.h"
#include "tests/ui/support/growing.h"
#include "ui/tasting/tasting_view.h"

#include <QLineEdit>
#include <QTableView>

namespace plumule::ui {

// A trial whose media are tasted, and its view.
class TastingTest : public GrowingTest
{
protected:
    TrialId trial;

    void SetUp() override
    {
        GrowingTest::SetUp();
        Trial asked;
        asked.name = "Which bed tastes best?";
        trial = journal->trials().save(asked)->id;
    }
    // The first media of the starter library.
    [[nodiscard]] std::vector<Medium> media(std::size_t count)
    {
        auto all = journal->media().all().value();
        EXPECT_GE(all.size(), count);
        all.resize(count);
        return all;
    }
    PanelId plan(TastingMethod method, std::size_t samples, const std::vector<std::string>& tasters,
                 const std::vector<std::string>& attributes = {"crunch", "flavour"})
    {
        PanelDraft draft = journal->tastings().newDraft(trial).value();
        draft.panel.name = "First tasting";
        draft.panel.method = method;
        draft.attributes = attributes;
        draft.tasters = tasters;
        for (const Medium& medium : media(samples)) {
            draft.media.push_back(medium.id);
        }
        const auto saved = journal->tastings().save(draft);
        EXPECT_TRUE(saved) << (saved ? "" : told(saved.error()));
        return saved.value_or(Panel()).id;
    }
    [[nodiscard]] PanelRecord recordOf(PanelId panel)
    {
        return journal->tastings().record(panel).value();
    }
    // Scores that differ by medium: the second one best, alike for all tasters.
    void scoreAll(PanelId panel)
    {
        const auto first = journal->tastings().draft(panel)->media.front();
        const PanelRecord record = recordOf(panel);
        const auto plating = journal->tastings().plating(panel).value();
        for (const PlatedServing& each : plating) {
            for (const PanelAttribute& attribute : record.attributes) {
                const int value = each.medium.id == first ? 3 : 8;
                const auto entered =
                    journal->tastings().enter(panel, each.serving.code, attribute.id, value);
                ASSERT_TRUE(entered) << told(entered.error());
            }
        }
    }
    std::unique_ptr<TastingView> openTasting(QSize size = {1000, 860})
    {
        messages.setWindowFlags(Qt::ToolTip);
        auto view = std::make_unique<TastingView>(*journal, services());
        journal->addListener(
            [told = QPointer<TastingView>(view.get())](const std::vector<Change>&) {
                if (told) {
                    QMetaObject::invokeMethod(
                        told, [told] { told->reload(); }, Qt::QueuedConnection);
                }
            });
        show(*view, size);
        view->activateWindow();
        EXPECT_TRUE(QTest::qWaitForWindowActive(view.get()));
        view->showTrial(trial);
        settleDown();
        return view;
    }
    static void press(QWidget& within, const char* name)
    {
        auto* found = find<QPushButton>(within, name);
        ASSERT_NE(found, nullptr);
        ASSERT_TRUE(found->isVisible() && found->isEnabled()) << name;
        click(found);
        settleDown();
    }
    using GrowingTest::press;
    static QString textOf(QWidget& within, const char* name)
    {
        const auto* found = find<QLabel>(within, name);
        return found == nullptr ? QString() : found->text();
    }
    // Everything that can be read in the window: labels, buttons, fields, cells, tips and what is
    // read aloud.
    static QString allTextOf(const QWidget& within)
    {
        QStringList texts;
        for (const QWidget* each : within.findChildren<QWidget*>()) {
            texts << each->toolTip() << each->accessibleName() << each->accessibleDescription()
                  << each->property("text").toString();
        }
        for (const QAbstractItemView* view : within.findChildren<QAbstractItemView*>()) {
            const QAbstractItemModel* model = view->model();
            for (int column = 0; model != nullptr && column < model->columnCount(); ++column) {
                texts << model->headerData(column, Qt::Horizontal).toString();
                for (int row = 0; row < model->rowCount(); ++row) {
                    for (const int role : {int(Qt::DisplayRole), int(Qt::ToolTipRole),
                                           int(Qt::AccessibleTextRole)}) {
                        texts << model->index(row, column).data(role).toString();
                    }
                }
            }
        }
        texts.removeAll(QString());
        return texts.join('\n');
    }
};

} // namespace plumule::ui
