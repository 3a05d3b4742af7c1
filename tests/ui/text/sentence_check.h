#pragma once

#include <QRegularExpression>
#include <QString>

namespace plumule::ui {

// What is wrong with a sentence; empty when it is one.
inline std::string blemish(const QString& sentence)
{
    // What the grower wrote may stand first, in quotes and as it was written.
    if (!sentence.startsWith(u'“') && (sentence.isEmpty() || !sentence.front().isUpper())) {
        return "it does not begin as a sentence";
    }
    if (!sentence.endsWith('.')) {
        return "it does not end as a sentence";
    }
    if (sentence.contains('%')) {
        return "it holds a place that was not filled";
    }
    // A file of tables may be named.
    static const QRegularExpression kKey("[a-z]_[a-z]|[a-z]\\.(?!csv\\b)[a-z]|::");
    if (sentence.contains(kKey)) {
        return "it holds a key";
    }
    static const QRegularExpression kStray(R"([:,;.( ]\.|\s[.,;:)]|\s\s|\.\.|“”)");
    if (sentence.contains(kStray)) {
        return "it holds stray marks or blanks";
    }
    return {};
}

} // namespace plumule::ui
