// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/starters/starter_files.h"

#include "core/interchange/document.h"

#include <QCoreApplication>
#include <QFile>

#include "resources/resources.h"
#include <algorithm>
#include <map>

namespace ohmwright {

namespace {

QString tr(const char *text)
{
    return QCoreApplication::translate("Starters", text);
}

std::map<QString, StarterJson> readFiles()
{
    registerResources();
    std::map<QString, StarterJson> files;
    for (const QString &name : QStringList{QStringLiteral("common")} + starterNames()) {
        QFile file(QStringLiteral(":/ohmwright/starters/%1.json").arg(name));
        const bool open = file.open(QIODevice::ReadOnly);
        Result<StarterJson> json = readDocument(open ? file.readAll() : QByteArray());
        Q_ASSERT_X(json.has_value(), "starters", qPrintable(name));
        files.emplace(name, json ? std::move(*json) : StarterJson::object());
    }
    return files;
}

StarterQuestion questionOf(const StarterJson &json)
{
    StarterQuestion question;
    question.key = textAt(json, "key");
    question.asks = textAt(json, "asks");
    question.why = textAt(json, "why");
    question.usual = textAt(json, "default");
    for (const StarterJson &answer : json.value("answers", StarterJson::array()))
        question.answers.push_back(
            {textAt(answer, "key"), textAt(answer, "says"), textAt(answer, "means")});
    return question;
}

// A question of the starter's own stands before one of the same key that all have.
const StarterJson *findQuestion(const StarterJson &own, const StarterJson &common,
                                const std::string &key)
{
    for (const StarterJson *file : {&own, &common}) {
        const auto questions = file->find("questions");
        if (questions == file->end())
            continue;
        for (const StarterJson &question : *questions)
            if (question.value("key", std::string()) == key)
                return &question;
    }
    return nullptr;
}

Starter starterOf(const QString &name)
{
    const StarterJson &own = *starterFile(name);
    Starter starter{name, textAt(own, "title"), textAt(own, "summary"), textAt(own, "suits"), {}};
    for (const StarterJson &key : own.value("asks", StarterJson::array()))
        if (const StarterJson *question =
                findQuestion(own, *starterFile(QStringLiteral("common")), key.get<std::string>()))
            starter.questions.push_back(questionOf(*question));
    return starter;
}

const StarterQuestion *findQuestion(const Starter &starter, const QString &key)
{
    const auto it = std::find_if(starter.questions.begin(), starter.questions.end(),
                                 [&](const StarterQuestion &q) { return q.key == key; });
    return it == starter.questions.end() ? nullptr : &*it;
}

QString keysOf(const Starter &starter)
{
    QStringList keys;
    for (const StarterQuestion &question : starter.questions)
        keys << question.key;
    return keys.join(QStringLiteral(", "));
}

QString keysOf(const StarterQuestion &question)
{
    QStringList keys;
    for (const StarterAnswer &answer : question.answers)
        keys << answer.key;
    return keys.join(QStringLiteral(", "));
}

bool isAnswer(const StarterQuestion &question, const QString &key)
{
    return std::any_of(question.answers.begin(), question.answers.end(),
                       [&](const StarterAnswer &a) { return a.key == key; });
}

Result<bool> isOneOf(const std::string &question, const StarterJson &wanted,
                     const QMap<std::string, std::string> &answers)
{
    const auto given = answers.constFind(question);
    if (given == answers.constEnd())
        return fail(ProblemCode::BadInput,
                    tr("The starter's condition on “%1” is on a question that it neither asks nor "
                       "settles.")
                        .arg(QString::fromStdString(question)));
    if (wanted.is_string())
        return wanted.get_ref<const std::string &>() == *given;
    return std::any_of(wanted.begin(), wanted.end(),
                       [&](const StarterJson &one) { return one == *given; });
}

} // namespace

const QStringList &starterNames()
{
    static const QStringList names{QStringLiteral("gearbox"), QStringLiteral("unit"),
                                   QStringLiteral("axle")};
    return names;
}

const StarterJson *starterFile(const QString &name)
{
    static const std::map<QString, StarterJson> files = readFiles();
    const auto it = files.find(name);
    return it == files.end() ? nullptr : &it->second;
}

QString textAt(const StarterJson &object, const char *member)
{
    const auto it = object.find(member);
    return it == object.end() || !it->is_string() ? QString()
                                                  : textOf(it->get_ref<const std::string &>());
}

std::vector<Starter> starters()
{
    std::vector<Starter> all;
    for (const QString &name : starterNames())
        all.push_back(starterOf(name));
    return all;
}

Result<Starter> findStarter(const QString &name)
{
    if (starterNames().contains(name))
        return starterOf(name);
    return fail(ProblemCode::NotFound, tr("There is no starter “%1”. There are: %2.")
                                           .arg(name, starterNames().join(QStringLiteral(", "))));
}

Result<StarterAnswers> readAnswers(const Starter &starter, const QStringList &words)
{
    StarterAnswers answers;
    for (const QString &word : words) {
        const QString key = word.section(u'=', 0, 0).trimmed();
        const QString answer = word.section(u'=', 1).trimmed();
        if (!word.contains(u'='))
            return fail(ProblemCode::BadInput,
                        tr("“%1” is no answer: write QUESTION=ANSWER.").arg(word));
        const StarterQuestion *question = findQuestion(starter, key);
        if (!question)
            return fail(ProblemCode::BadInput,
                        tr("The starter “%1” asks no question “%2”. It asks: %3.")
                            .arg(starter.name, key, keysOf(starter)));
        if (!isAnswer(*question, answer))
            return fail(ProblemCode::BadInput, tr("“%1” is no answer to “%2”. There are: %3.")
                                                   .arg(answer, key, keysOf(*question)));
        if (answers.contains(key))
            return fail(ProblemCode::BadInput, tr("“%1” is answered twice.").arg(key));
        answers.insert(key, answer);
    }
    return answers;
}

QMap<std::string, std::string> allAnswers(const Starter &starter, const StarterAnswers &answers)
{
    QMap<std::string, std::string> all;
    const StarterJson settled = starterFile(starter.name)->value("settled", StarterJson::object());
    for (const auto &[key, value] : settled.items())
        all.insert(key, value.get<std::string>());
    for (const StarterQuestion &question : starter.questions)
        all.insert(question.key.toStdString(),
                   answers.value(question.key, question.usual).toStdString());
    all.insert("starter", starter.name.toStdString());
    return all;
}

Result<bool> isIncluded(const StarterJson &record, const QMap<std::string, std::string> &answers)
{
    bool included = true;
    if (const auto when = record.find("when"); when != record.end()) {
        for (const auto &[question, wanted] : when->items()) {
            const Result<bool> holds = isOneOf(question, wanted, answers);
            if (!holds)
                return holds;
            included = included && *holds;
        }
    }
    if (const auto unless = record.find("unless"); unless != record.end()) {
        for (const auto &[question, unwanted] : unless->items()) {
            const Result<bool> holds = isOneOf(question, unwanted, answers);
            if (!holds)
                return holds;
            included = included && !*holds;
        }
    }
    return included;
}

} // namespace ohmwright
