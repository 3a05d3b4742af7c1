#include "ui/window/help_dialog.h"

#include "ui/widget/theme.h"
#include "ui/widget/widgets.h"

#include <QGridLayout>
#include <QVBoxLayout>

namespace plumule::ui {
namespace {

using Lines = std::vector<std::pair<QString, QString>>;

Lines keysEverywhere()
{
    return {{"Ctrl+1 … 9", HelpDialog::tr("the first nine pages, from the top")},
            {"Ctrl+Page Up, Ctrl+Page Down", HelpDialog::tr("the page above, the page below")},
            {"Ctrl+F", HelpDialog::tr("search the trays: code, lot, note, why it was discarded")},
            {"Ctrl+P", HelpDialog::tr("print the sheet of the page")},
            {"Ctrl+Z, Ctrl+Shift+Z", HelpDialog::tr("take back what was done last; do it again")},
            {"F5", HelpDialog::tr("read the journal again")},
            {"Enter", HelpDialog::tr("save the fields that the focus is in")},
            {"Esc", HelpDialog::tr("back, or leave what is asked as it was")},
            {"F8", HelpDialog::tr("start or stop the timer of work: on Round, Weigh-in and Costs")},
            {HelpDialog::tr("a scanner"), HelpDialog::tr("opens the tray whose label it reads")}};
}

Lines keysOfRound()
{
    return {{HelpDialog::tr("Space"), HelpDialog::tr("tick the tray in hand, or untick it")},
            {"S", HelpDialog::tr("tick its whole shelf")},
            {"R, N", HelpDialog::tr("ready, or not yet, for a tray that is asked about")},
            {"U", HelpDialog::tr("take back")},
            {"P", HelpDialog::tr("print the round")}};
}

Lines keysOfRacks()
{
    return {{HelpDialog::tr("Space"),
             HelpDialog::tr("carry the tray, or those that are chosen; put them down")},
            {HelpDialog::tr("arrows, Page Up, Page Down"),
             HelpDialog::tr("go from place to place and from rack to rack, also with what is "
                            "carried; with Shift choose trays")},
            {"Enter", HelpDialog::tr("open the tray, or put down what is carried")},
            {"X", HelpDialog::tr("swap with what stands in the way; or two chosen trays")},
            {HelpDialog::tr("Del"), HelpDialog::tr("take off the racks")},
            {"S, P, U", HelpDialog::tr("sow, print, take back")}};
}

Lines keysOfScale()
{
    return {{"Enter", HelpDialog::tr("record, and on to the next tray")},
            {"F2", HelpDialog::tr("correct what was weighed last")},
            {"F4", HelpDialog::tr("whether it is the last cut")},
            {"F6", HelpDialog::tr("harvest or residue")}};
}

Lines keysOfOrders()
{
    return {{"N", HelpDialog::tr("write an order down")},
            {"Enter", HelpDialog::tr("sow for the chosen promise, once it is time")}};
}

Lines keysOfStock()
{
    return {{"C, B", HelpDialog::tr("count what is left; write down what was bought")},
            {"Z", HelpDialog::tr("pieces were sanitised")},
            {"L", HelpDialog::tr("when something is said to run low")},
            {"T", HelpDialog::tr("follow a tray, a lot, a piece, a water or a person")}};
}

Lines words()
{
    return {
        {HelpDialog::tr("medium"),
         HelpDialog::tr("what the roots grow in: a loose mix, a mat or a mesh; inert, or bearing "
                        "nutrients; for one use or for many")},
        {HelpDialog::tr("piece"), HelpDialog::tr("one mat or mesh that is washed and used again")},
        {HelpDialog::tr("protocol"),
         HelpDialog::tr("the stages of a variety, each with its length, its watering and its cue")},
        {HelpDialog::tr("cue"), HelpDialog::tr("what to look for before a tray is moved on")},
        {HelpDialog::tr("round"),
         HelpDialog::tr("the watering of one morning or evening, in walking order")},
        {HelpDialog::tr("residue"),
         HelpDialog::tr("what is left in the tray after cutting, weighed wet")},
        {HelpDialog::tr("block"),
         HelpDialog::tr("trays of a trial that stand under the same conditions, usually a shelf")},
        {HelpDialog::tr("margin"),
         HelpDialog::tr("the smallest difference that would change what you do")},
        {HelpDialog::tr("day of a tray"), HelpDialog::tr("the day of sowing is day 1")}};
}

QWidget* listOf(const QString& heading, const Lines& lines)
{
    auto* card = new Card(heading);
    // A form's rows don't grow with words that wrap.
    auto* grid = new QGridLayout;
    grid->setHorizontalSpacing(scaled(16));
    grid->setVerticalSpacing(scaled(9));
    grid->setColumnStretch(1, 1);
    int row = 0;
    for (const auto& [name, meaning] : lines) {
        auto* key = label(name, "strong");
        auto* words = label(meaning);
        key->setWordWrap(true);
        key->setMinimumWidth(scaled(110));
        words->setWordWrap(true);
        grid->addWidget(key, row, 0, Qt::AlignTop);
        grid->addWidget(words, row++, 1, Qt::AlignTop);
    }
    card->body()->addLayout(grid);
    return card;
}

} // namespace

HelpDialog::HelpDialog(Ask& ask, QWidget* parent)
    : FormDialog(ask, "helpDialog", tr("Keys and words"), parent)
{
    wish({scaled(640), scaled(720)});
    leaveFreely();
    body()->addWidget(listOf(tr("Everywhere"), keysEverywhere()));
    body()->addWidget(listOf(tr("On the round"), keysOfRound()));
    body()->addWidget(listOf(tr("At the racks"), keysOfRacks()));
    body()->addWidget(listOf(tr("At the scale"), keysOfScale()));
    body()->addWidget(listOf(tr("On orders"), keysOfOrders()));
    body()->addWidget(listOf(tr("In the stock"), keysOfStock()));
    body()->addWidget(listOf(tr("Words"), words()));
    connect(addButton(tr("Close"), "helpClose", "primary"), &QPushButton::clicked, this,
            &QDialog::accept);
}

} // namespace plumule::ui

#include "moc_help_dialog.cpp"
