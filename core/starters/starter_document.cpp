// SPDX-License-Identifier: GPL-3.0-or-later
// From a starter's files and the answers to an interchange document. Records are layered: what all
// starters have in common, its changes by answer, then what the starter's own file says of the same
// key, and its changes. Fields replace; the lists `after`, `needs` and `connections` grow.
//
// What the answers leave out takes every reference to it along: a need of it, or a field that names
// it. A reference to a key that is nowhere in the files stays, and the interchange refuses it.
#include "core/parts/guided_tests.h"
#include "core/starters/starter_files.h"
#include "core/starters/starter_links.h"

#include <QCoreApplication>

#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <vector>

namespace ohmwright {

namespace {

using Json = StarterJson;

QString tr(const char *text)
{
    return QCoreApplication::translate("Starters", text);
}

// Which fields name a record of which kind.
constexpr std::array<std::pair<std::string_view, std::string_view>, 14> kReferences{{
    {"after", "tasks"},
    {"redo_from", "tasks"},
    {"part", "parts"},
    {"opens", "parts"},
    {"buys", "parts"},
    {"asks", "letters"},
    {"other", "parts"},
    {"part_of", "parts"},
    {"test", "tests"},
    {"letter", "letters"},
    {"interface", "interfaces"},
    {"circuit", "circuits"},
    {"line", "budget_lines"},
    {"fuse", "parts"},
}};

// What a record says when its starter does not.
const Json &defaultsOf(std::string_view kind)
{
    static const std::map<std::string_view, Json> kDefaults{
        {"parts", {{"state", "wanted"}, {"counted_to", "build"}}},
        {"interfaces", {{"state", "to find out"}}},
        {"lost_functions", {{"settled", false}}},
        {"safety_systems", {{"state", "planned"}}},
        {"masses", {{"evidence", "assumed"}}},
        {"letters", {{"state", "to ask"}}},
        {"tests", {{"result", "open"}}},
        {"tasks",
         {{"milestone", false},
          {"high_voltage", false},
          {"work_minutes", 0},
          {"wait_days", 0},
          {"state", "open"}}},
    };
    static const Json kNone = Json::object();
    const auto it = kDefaults.find(kind);
    return it == kDefaults.end() ? kNone : it->second;
}

bool growsAsList(const std::string &field)
{
    return field == "after" || field == "needs" || field == "connections";
}

// "work": [60, 120, 240] as its three fields.
void spread(Json &record, const char *field, std::string_view unit)
{
    const auto it = record.find(field);
    if (it == record.end() || !it->is_array() || it->size() != 3)
        return;
    const Json three = std::move(*it); // erased in the next line
    record.erase(field);
    record["least_" + std::string(unit)] = three[0];
    record[std::string(unit)] = three[1];
    record["most_" + std::string(unit)] = three[2];
}

void addSentence(Json &record, const std::string &sentence)
{
    const std::string note = record.value("note", std::string());
    record["note"] = note.empty() ? sentence : note + " " + sentence;
}

class DocumentMaker
{
public:
    DocumentMaker(const Starter &starter, const StarterAnswers &answers, const StarterBook &book)
        : m_starter(starter), m_answers(allAnswers(starter, answers)), m_book(book)
    {}

    Result<QByteArray> make()
    {
        for (const char *kind : kStarterKinds)
            gather(kind);
        if (m_problem)
            return fail(*m_problem);
        Json document;
        document["format"] = "ohmwright";
        document["version"] = kInterchangeVersion;
        document["build"] = build(); // before the records are handed out
        document["vehicle"] = Json::object();
        for (const char *kind : kStarterKinds) {
            Json array = Json::array();
            for (auto &[key, record] : m_records[kind])
                array.push_back(finished(kind, std::move(record)));
            if (!array.empty())
                document[kind] = std::move(array);
        }
        if (m_problem)
            return fail(*m_problem);
        leaveOutLinksSaidByOthers(document["tasks"]);
        return QByteArray::fromStdString(document.dump());
    }

private:
    struct Source
    {
        QString file;
        const Json *record;
        QString where; // JSON pointer in the file
    };

    void refuse(const Source &source, Problem problem)
    {
        if (m_problem)
            return;
        problem.where = source.file + QStringLiteral(".json") + source.where;
        m_problem = std::move(problem);
    }

    bool included(const Json &record, const Source &source)
    {
        const Result<bool> answer = isIncluded(record, m_answers);
        if (!answer)
            refuse(source, answer.error());
        return answer && *answer;
    }

    // Every record of the kind, in the order in which its key is first met.
    void gather(const std::string &kind)
    {
        std::vector<std::pair<std::string, std::vector<Source>>> layers;
        std::map<std::string, std::size_t> places;
        for (const QString &name : {QStringLiteral("common"), m_starter.name}) {
            const Json &file = *starterFile(name);
            const auto array = file.find(kind);
            if (array == file.end())
                continue;
            for (std::size_t i = 0; i < array->size(); ++i) {
                const Json &record = (*array)[i];
                const std::string key = record.value("key", std::string());
                const auto [place, isNew] = places.emplace(key, layers.size());
                if (isNew)
                    layers.push_back({key, {}});
                layers[place->second].second.push_back(
                    {name, &record,
                     QStringLiteral("/%1/%2").arg(QString::fromStdString(kind)).arg(i)});
            }
        }
        auto &records = m_records[kind];
        for (const auto &[key, sources] : layers) {
            m_known[kind].insert(key);
            Json record = defaultsOf(kind);
            bool in = true;
            for (const Source &source : sources) {
                in = in && included(*source.record, source);
                layOver(record, *source.record, source);
            }
            if (!in)
                continue;
            m_taken[kind].insert(key);
            records.emplace_back(key, std::move(record));
        }
    }

    void layOver(Json &record, const Json &layer, const Source &source)
    {
        const auto put = [&](const Json &fields) {
            for (const auto &[field, value] : fields.items()) {
                if (field == "when" || field == "unless" || field == "changes")
                    continue;
                if (!growsAsList(field)) {
                    record[field] = value;
                    continue;
                }
                Json &list = record[field];
                for (const Json &entry : value)
                    list.push_back(entry);
            }
        };
        put(layer);
        for (const Json &change : layer.value("changes", Json::array()))
            if (included(change, source))
                put(change);
    }

    // Whether the field names a record that the answers leave out.
    bool namesWhatIsOut(const std::string &field, const Json &value)
    {
        for (const auto &[name, kind] : kReferences)
            if (field == name && value.is_string()) {
                const auto &key = value.get_ref<const std::string &>();
                const std::string of(kind);
                return m_known[of].count(key) && !m_taken[of].count(key);
            }
        return false;
    }

    bool hasGone(const Json &entry)
    {
        bool gone = false;
        for (const auto &[field, value] : entry.items())
            gone = gone || namesWhatIsOut(field, value);
        return gone;
    }

    Json finished(std::string_view kind, Json record)
    {
        for (auto it = record.begin(); it != record.end();) {
            if (namesWhatIsOut(it.key(), it.value()))
                it = record.erase(it);
            else
                ++it;
        }
        if (kind == "tasks")
            finishTask(record);
        else if (kind == "parts")
            finishPart(record);
        else if (kind == "letters")
            spread(record, "answer", "answer_days");
        else if (kind == "tests" && record.value("kind", std::string()) == "first power-up")
            record["steps"] = guidedSteps();
        else if (kind == "budget_lines")
            finishLine(record);
        return record;
    }

    void finishTask(Json &task)
    {
        spread(task, "work", "work_minutes");
        spread(task, "wait", "wait_days");
        if (const std::string caution = task.value("caution", std::string()); !caution.empty())
            addSentence(task, tr("Caution: ").toStdString() + caution);
        task.erase("caution");
        Json needs = Json::array();
        for (const Json &before : task.value("after", Json::array()))
            needs.push_back({{"kind", "task"}, {"after", before}});
        task.erase("after");
        for (const Json &need : task.value("needs", Json::array()))
            needs.push_back(need);
        Json kept = Json::array();
        const Source source{m_starter.name, &task,
                            QStringLiteral("/tasks (%1)").arg(textAt(task, "key"))};
        for (Json &need : needs) {
            if (!included(need, source) || hasGone(need))
                continue;
            need.erase("when");
            need.erase("unless");
            kept.push_back(std::move(need));
        }
        task["needs"] = std::move(kept);
    }

    void finishPart(Json &part)
    {
        spread(part, "lead", "lead_days");
        part["moves"] =
            Json::array({{{"to_state", part["state"]},
                          {"moved_on", m_book.today.toString(Qt::ISODate).toStdString()}}});
        if (const auto it = part.find("connections"); it != part.end()) {
            Json kept = Json::array();
            for (const Json &connection : *it)
                if (!hasGone(connection))
                    kept.push_back(connection);
            *it = std::move(kept);
        }
    }

    static Json guidedSteps()
    {
        Json steps = Json::array();
        for (const TestStep &step : firstPowerUpSteps())
            steps.push_back({{"name", step.name.toStdString()},
                             {"expected", step.expected.toStdString()},
                             {"stop_if", step.stopIf.toStdString()},
                             {"result", "open"}});
        return steps;
    }

    // A sum in another currency than the book's would need a rate that nobody gave.
    void finishLine(Json &line)
    {
        line["position"] = m_lines++;
        const std::string allowance = line.value("allowance", std::string());
        const std::string code = m_book.currency.code().toStdString();
        if (allowance.ends_with(" " + code))
            return;
        line["allowance"] =
            QString::number(0, 'f', m_book.currency.digits()).toStdString() + " " + code;
        addSentence(
            line,
            tr("Reckoned with %1 there.").arg(QString::fromStdString(allowance)).toStdString());
    }

    // Of all hands together, by the working times.
    [[nodiscard]] int minutesPerWeek() const
    {
        int minutes = 0;
        if (const auto times = m_records.find("working_times"); times != m_records.end())
            for (const auto &[key, time] : times->second)
                minutes += time.value("minutes", 0) * time.value("hands", 1);
        return minutes;
    }

    Json build()
    {
        Json build = starterFile(QStringLiteral("common"))->value("build", Json::object());
        build["title"] = m_book.title.toStdString();
        build["currency"] = m_book.currency.code().toStdString();
        if (const int minutes = minutesPerWeek(); minutes > 0)
            build["hours_per_week"] = (minutes + 30) / 60;
        QStringList said;
        for (const StarterQuestion &question : m_starter.questions)
            for (const StarterAnswer &answer : question.answers)
                if (answer.key.toStdString() == m_answers.value(question.key.toStdString()))
                    said << question.asks + u' ' + answer.says + u'.';
        build["note"] = tr("Begun from the starter “%1”. %2 Its hours, days and sums are common "
                           "practice, no published source: put in your own.")
                            .arg(m_starter.title, said.join(u' '))
                            .toStdString();
        return build;
    }

    const Starter &m_starter;
    const QMap<std::string, std::string> m_answers;
    const StarterBook &m_book;
    std::map<std::string, std::vector<std::pair<std::string, Json>>> m_records;
    std::map<std::string, std::set<std::string>> m_known, m_taken;
    std::optional<Problem> m_problem;
    int m_lines = 0;
};

} // namespace

Result<QByteArray> starterDocument(const QString &name, const StarterAnswers &answers,
                                   const StarterBook &book)
{
    const Result<Starter> starter = findStarter(name);
    if (!starter)
        return fail(starter.error());
    QStringList words;
    for (auto it = answers.begin(); it != answers.end(); ++it)
        words << it.key() + u'=' + it.value();
    if (const Result<StarterAnswers> fine = readAnswers(*starter, words); !fine)
        return fail(fine.error());
    return DocumentMaker(*starter, answers, book).make();
}

} // namespace ohmwright
