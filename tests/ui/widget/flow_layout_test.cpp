#include "ui/widget/flow_layout.h"

#include <QLabel>
#include <QPushButton>
#include <gtest/gtest.h>

namespace plumule::ui {
namespace {

TEST(FlowLayout, PutsEachItemInTheMiddleOfItsRow)
{
    QWidget holder;
    auto* row = new FlowLayout(&holder);
    auto* words = new QLabel("Shelf 1");
    auto* act = new QPushButton("Remove");
    words->setFixedHeight(16);
    act->setFixedHeight(40);
    row->addWidget(words);
    row->addWidget(act);
    holder.resize(400, 60);
    row->setGeometry(QRect(0, 0, 400, 60));
    EXPECT_EQ(words->geometry().center().y(), act->geometry().center().y());
    row->setGeometry(QRect(0, 0, 60, 120));
    EXPECT_GT(act->y(), words->geometry().bottom()) << "in a row of its own";
}

} // namespace
} // namespace plumule::ui
