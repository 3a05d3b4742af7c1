#pragma once

#include <QCoreApplication>
#include <QString>
#include <QStringList>

#include <functional>
#include <optional>

class QWidget;

namespace plumule::ui {

// Every question that stops the grower goes through here, so that tests answer it. The answer comes
// by call-back: no nested event loop.
class Ask
{
public:
    using Yes = std::function<void()>;
    using Answered = std::function<void(const QString&)>;

    virtual ~Ask() = default;

    // Calls `yes` when agreed. `action` is what the agreeing button says ("Discard the tray").
    virtual void confirm(QWidget* parent, const QString& title, const QString& question,
                         const QString& action, Yes yes) = 0;
    // Something typed is not saved: calls `save` or `leave`, or neither where the grower stays.
    virtual void unsaved(QWidget* parent, const QString& question, Yes save, Yes leave) = 0;
    // Calls `answered` with a text that is not empty.
    virtual void line(QWidget* parent, const QString& title, const QString& label,
                      const QString& preset, Answered answered) = 0;
    // Calls `answered` with a path. `filter` as QFileDialog's.
    virtual void fileToOpen(QWidget* parent, const QString& title, const QString& filter,
                            Answered answered) = 0;
    virtual void fileToSave(QWidget* parent, const QString& title, const QString& preset,
                            const QString& filter, Answered answered) = 0;
    virtual void folder(QWidget* parent, const QString& title, Answered answered) = 0;
};

// Asks with dialogs.
class DialogAsk : public Ask
{
    Q_DECLARE_TR_FUNCTIONS(DialogAsk)

public:
    void confirm(QWidget* parent, const QString& title, const QString& question,
                 const QString& action, Yes yes) override;
    void unsaved(QWidget* parent, const QString& question, Yes save, Yes leave) override;
    void line(QWidget* parent, const QString& title, const QString& label, const QString& preset,
              Answered answered) override;
    void fileToOpen(QWidget* parent, const QString& title, const QString& filter,
                    Answered answered) override;
    void fileToSave(QWidget* parent, const QString& title, const QString& preset,
                    const QString& filter, Answered answered) override;
    void folder(QWidget* parent, const QString& title, Answered answered) override;
};

} // namespace plumule::ui
