#pragma once

#include <QLineEdit>
#include <QTest>
#include <QVBoxLayout>
#include <QWidget>
#include <gtest/gtest.h>
#include <initializer_list>

namespace plumule::ui {

// A window with fields below one another, the focus on the one before them.
class FieldWindowTest : public ::testing::Test
{
protected:
    QWidget window;
    QLineEdit* before = new QLineEdit;

    void show(std::initializer_list<QWidget*> fields)
    {
        auto* column = new QVBoxLayout(&window);
        column->addWidget(before);
        for (QWidget* each : fields) {
            column->addWidget(each);
        }
        window.show();
        window.activateWindow();
        ASSERT_TRUE(QTest::qWaitForWindowActive(&window));
        before->setFocus();
    }
    static void type(QLineEdit* field, const QString& text)
    {
        field->setFocus();
        field->selectAll();
        QTest::keyClicks(field, text);
    }
};

} // namespace plumule::ui
