#include "tests/app/program_run.h"

#include <QFile>
#include <QProcess>

#include <cmath>
#include <fstream>
#include <stdexcept>

namespace plumule::app {
namespace {

void expectOneLine(const QStringList& arguments, int exitCode, const QString& words)
{
    const Answer answer = run(arguments);
    const std::string call = arguments.join(' ').toStdString();
    EXPECT_EQ(answer.exitCode, exitCode) << call;
    EXPECT_EQ(answer.out.toStdString(), "") << call;
    EXPECT_EQ(answer.error.count('\n'), 1) << call << ": " << answer.error.toStdString();
    EXPECT_TRUE(answer.error.contains(words)) << call << ": " << answer.error.toStdString();
}

} // namespace

nlohmann::ordered_json Answer::json() const
{
    return nlohmann::ordered_json::parse(out.toStdString());
}

Answer run(const QStringList& arguments)
{
    QProcess program;
    program.start(QStringLiteral(PLUMULE_PROGRAM), arguments);
    EXPECT_TRUE(program.waitForFinished(60'000)) << arguments.join(' ').toStdString();
    EXPECT_EQ(program.exitStatus(), QProcess::NormalExit) << arguments.join(' ').toStdString();
    return {program.exitCode(), QString::fromUtf8(program.readAllStandardOutput()),
            QString::fromUtf8(program.readAllStandardError())};
}

QString reference(const QString& name)
{
    return QStringLiteral(PLUMULE_REFERENCES "/") + name;
}

const nlohmann::json& expectedOf(const std::string& id)
{
    static const nlohmann::json all = [] {
        std::ifstream file(PLUMULE_REFERENCES "/expected.json");
        return nlohmann::json::parse(file);
    }();
    for (const auto& one : all.at("cases")) {
        if (one.at("id") == id) {
            return one.at("expected");
        }
    }
    throw std::runtime_error("no case " + id);
}

std::string keysOf(const nlohmann::ordered_json& object)
{
    std::string keys;
    for (const auto& [key, value] : object.items()) {
        keys += (keys.empty() ? "" : " ") + key;
    }
    return keys;
}

void expectClose(const nlohmann::ordered_json& value, const nlohmann::json& wanted, double relative)
{
    ASSERT_TRUE(value.is_number()) << value;
    const double number = wanted.get<double>();
    EXPECT_NEAR(value.get<double>(), number, relative * std::abs(number) + 1e-12);
}

void expectBadCall(const QStringList& arguments, const QString& words)
{
    expectOneLine(arguments, 2, words);
}

void expectNoAnswer(const QStringList& arguments, const QString& words)
{
    expectOneLine(arguments, 1, words);
}

QString ProgramTest::write(const QString& name, const QByteArray& text)
{
    QFile file(path(name));
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    EXPECT_EQ(file.write(text), text.size());
    return file.fileName();
}

} // namespace plumule::app
