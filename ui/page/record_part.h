#pragma once

#include "ui/page/setup_part.h"

namespace plumule::ui {

class MasterDetail;

// A part over records of one kind: their list, the form of the chosen one, Save and Remove. What is
// typed in the form is never left without a question.
class RecordPart : public SetupPart
{
    Q_OBJECT

public:
    // `newName` is what the New button says.
    RecordPart(Journal& journal, Services services, const QString& newName,
               QWidget* parent = nullptr);

    [[nodiscard]] bool hasUnsaved() const override;
    bool saveTyped() override { return save(); }

protected:
    // Fills the fields from a record (0: from a new one), unless they were filled from it as it
    // stands.
    virtual void show(qint64 id) = 0;
    // Lets the next show() fill the fields, whatever was typed in them.
    virtual void forget() = 0;
    // False, and said why, where it is refused.
    virtual bool save() = 0;
    virtual void remove() = 0;

    // To be called once the fields hold a record as it is stored.
    void settleForm();

    MasterDetail* m_records = nullptr;
};

} // namespace plumule::ui
