#pragma once

#include "ui/page/page.h"

class QTabBar;

namespace plumule::ui {

class PageStack;
class SetupPart;

// Everything that is set once or seldom, part by part: nothing needs the file to be edited by hand.
class SetupPage : public Page
{
    Q_OBJECT

public:
    SetupPage(Journal& journal, Services services, QWidget* parent = nullptr);

    [[nodiscard]] QString name() const override;
    [[nodiscard]] bool concerns(Concept about) const override;
    void reload() override;
    [[nodiscard]] bool hasUnsaved() const override;

    [[nodiscard]] QStringList partNames() const;
    void showPart(const QString& name);

Q_SIGNALS:
    void journalAsked(const QString& path);
    void lookAsked(const QString& look, double fontScale); // not stored yet

private:
    void addPart(SetupPart* part);

    QTabBar* m_tabs = nullptr;
    PageStack* m_stack = nullptr;
    std::vector<SetupPart*> m_parts;
};

} // namespace plumule::ui
