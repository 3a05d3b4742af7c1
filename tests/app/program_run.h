#pragma once

#include <QStringList>
#include <QTemporaryDir>

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

namespace plumule::app {

// What the program answered to one call.
struct Answer
{
    int exitCode = -1;
    QString out;
    QString error;

    [[nodiscard]] nlohmann::ordered_json json() const;
};

// Runs the built program; fails the test when it crashes or hangs.
[[nodiscard]] Answer run(const QStringList& arguments);

// The file of the reference data.
[[nodiscard]] QString reference(const QString& name);
// What the reference case expects.
[[nodiscard]] const nlohmann::json& expectedOf(const std::string& id);

// The keys of an object in their order, with a blank between.
[[nodiscard]] std::string keysOf(const nlohmann::ordered_json& object);

// Within a relative distance, both numbers.
void expectClose(const nlohmann::ordered_json& value, const nlohmann::json& wanted,
                 double relative);
// Exit 2, nothing on standard output, one line on standard error that holds `words`.
void expectBadCall(const QStringList& arguments, const QString& words);
// The same with exit 1.
void expectNoAnswer(const QStringList& arguments, const QString& words);

// A folder of its own with files written by the test.
class ProgramTest : public ::testing::Test
{
protected:
    // Writes a file, gives its path.
    QString write(const QString& name, const QByteArray& text);
    [[nodiscard]] QString path(const QString& name) const { return m_folder.filePath(name); }

private:
    QTemporaryDir m_folder;
};

} // namespace plumule::app
