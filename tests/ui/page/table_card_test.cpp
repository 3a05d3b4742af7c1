#include "ui/page/table_card.h"

#include "tests/ui/support/growing.h"

#include <QFile>
#include <QScrollBar>
#include <QStandardItemModel>
#include <QTableView>

namespace plumule::ui {
namespace {

class TableCardTest : public GrowingTest
{
protected:
    void SetUp() override
    {
        GrowingTest::SetUp();
        model.setHorizontalHeaderLabels({"Medium", "Yield, g"});
        add("Coir mix", "301.5");
        add("Mat, \"thick\"", "1\n2");
        card = std::make_unique<TableCard>(services(), "Means", &model, "means");
        card->fit();
        show(*card, {600, 400});
    }
    void add(const QString& medium, const QString& grams)
    {
        model.appendRow({new QStandardItem(medium), new QStandardItem(grams)});
    }
    void saveTo(const QString& file)
    {
        ask.fileAnswer = file;
        click(find<QPushButton>(*card, "meansSave"));
        settleDown();
    }
    [[nodiscard]] static QByteArray contentOf(const QString& file)
    {
        QFile opened(file);
        EXPECT_TRUE(opened.open(QIODevice::ReadOnly)) << file.toStdString();
        return opened.readAll();
    }

    QStandardItemModel model;
    std::unique_ptr<TableCard> card;
};

TEST_F(TableCardTest, IsAsHighAsItsRows)
{
    const QTableView* table = card->table();
    EXPECT_FALSE(table->verticalScrollBar()->isVisible());
    const int before = table->height();
    add("Felt mat", "290");
    card->fit();
    settleDown();
    EXPECT_GT(table->height(), before);
}

TEST_F(TableCardTest, SavesWhatItShowsSoThatAnySpreadsheetReadsIt)
{
    const QString file = folder.filePath("means.csv");
    saveTo(file);
    EXPECT_FALSE(messages.isRefusal()) << messages.text().toStdString();
    EXPECT_TRUE(messages.text().contains("means.csv"));
    const QString text = QString::fromUtf8(contentOf(file)).remove('\r');
    EXPECT_TRUE(text.contains("Medium,\"Yield, g\"\n")) << text.toStdString();
    EXPECT_TRUE(text.contains("Coir mix,301.5\n")) << text.toStdString();
    EXPECT_TRUE(text.contains("\"Mat, \"\"thick\"\"\",\"1\n2\"\n")) << text.toStdString();
}

TEST_F(TableCardTest, SaysWhereItCantBeSaved)
{
    saveTo(folder.filePath("nowhere/means.csv"));
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("means.csv")) << messages.text().toStdString();
    EXPECT_FALSE(QFile::exists(folder.filePath("nowhere")));
}

TEST_F(TableCardTest, IsNotSavedOverTheOpenJournal)
{
    const QString file = folder.filePath("test.plumule");
    saveTo(file);
    EXPECT_TRUE(messages.isRefusal());
    EXPECT_TRUE(messages.text().contains("is open")) << messages.text().toStdString();
    EXPECT_TRUE(journal->faults().value().empty());
}

TEST_F(TableCardTest, AFileThatWasThereIsReplacedWholeOrLeftAlone)
{
    const QString file = folder.filePath("means.csv");
    QFile older(file);
    ASSERT_TRUE(older.open(QIODevice::WriteOnly));
    older.write(QByteArray(10'000, 'x'));
    older.close();
    saveTo(file);
    EXPECT_FALSE(contentOf(file).contains('x') && contentOf(file).size() > 9'000);
    EXPECT_TRUE(contentOf(file).contains("Coir mix"));
}

} // namespace
} // namespace plumule::ui
