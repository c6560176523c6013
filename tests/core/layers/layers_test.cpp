// SPDX-License-Identifier: GPL-3.0-or-later
// The layers, read from the include lines: each folder may include only what stands below it. The
// linker alone cannot see a header-only slip.
#include <QDirIterator>
#include <QFile>
#include <QMap>
#include <QRegularExpression>
#include <QSet>
#include <QString>
#include <QStringList>

#include <gtest/gtest.h>

#include <functional>

namespace {

const QString kRoot = QStringLiteral(OHMWRIGHT_SOURCE_DIR "/");

QMap<QString, QStringList> allowed()
{
    const auto list = [](const char *words) {
        return QString::fromLatin1(words).split(u' ');
    };
    return {
        {QStringLiteral("core/quantity"), list("core/quantity")},
        {QStringLiteral("core/records"), list("core/records core/quantity")},
        {QStringLiteral("core/book"), list("core/book core/records core/quantity")},
        {QStringLiteral("core/parts"),
         list("core/parts core/book core/records core/quantity resources")},
        {QStringLiteral("core/checks"),
         list("core/checks core/parts core/book core/records core/quantity resources")},
        {QStringLiteral("core/plan"),
         list("core/plan core/parts core/book core/records core/quantity")},
        {QStringLiteral("core/budget"),
         list("core/budget core/parts core/book core/records core/quantity")},
        {QStringLiteral("core/forecast"),
         list("core/forecast core/plan core/budget core/parts core/book core/records "
              "core/quantity")},
        {QStringLiteral("core/sheet"),
         list("core/sheet core/checks core/plan core/budget core/parts core/records "
              "core/quantity")},
        {QStringLiteral("core/interchange"),
         list("core/interchange core/parts core/book core/records core/quantity")},
        {QStringLiteral("core/cards"),
         list("core/cards core/interchange core/parts core/book core/records core/quantity")},
        {QStringLiteral("core/verdicts"),
         list("core/verdicts core/checks core/cards core/parts core/book core/records "
              "core/quantity")},
        {QStringLiteral("core/diagram"),
         list("core/diagram core/verdicts core/records core/quantity")},
        {QStringLiteral("core/starters"),
         list("core/starters core/interchange core/plan core/parts core/book core/records "
              "core/quantity resources")},
    };
}

struct Include
{
    QString file;
    QString target;
};

std::vector<Include> includesBelow(const QString &folder)
{
    static const QRegularExpression line(QStringLiteral("^#include\\s+[<\"]([^>\"]+)[>\"]"),
                                         QRegularExpression::MultilineOption);
    std::vector<Include> found;
    QDirIterator files(kRoot + folder, {QStringLiteral("*.cpp"), QStringLiteral("*.h")},
                       QDir::Files, QDirIterator::Subdirectories);
    while (files.hasNext()) {
        QFile file(files.next());
        EXPECT_TRUE(file.open(QIODevice::ReadOnly));
        auto matches = line.globalMatch(QString::fromUtf8(file.readAll()));
        while (matches.hasNext())
            found.push_back({file.fileName().mid(kRoot.size()), matches.next().captured(1)});
    }
    return found;
}

TEST(Layers, IncludeOnlyWhatStandsBelowThem)
{
    const auto rules = allowed();
    for (auto layer = rules.begin(); layer != rules.end(); ++layer) {
        for (const Include &include : includesBelow(layer.key())) {
            if (!include.target.contains(u'/') || include.target.startsWith(QLatin1String("tl/")) ||
                include.target.startsWith(QLatin1String("nlohmann/")) ||
                include.target.startsWith(QLatin1String("libical/")))
                continue;
            const QString folder = include.target.section(
                u'/', 0, include.target.startsWith(QLatin1String("core/")) ? 1 : 0);
            EXPECT_TRUE(layer.value().contains(folder))
                << include.file.toStdString() << " includes " << include.target.toStdString();
        }
    }
}

TEST(Layers, CoreKnowsNoWindow)
{
    static const QRegularExpression gui(
        QStringLiteral("^(QtGui|QtWidgets|QWidget|QPainter|QApplication|QGuiApplication|QPdfWriter|"
                       "QColor|QIcon|QPixmap|QImage|QFont)"));
    for (const Include &include : includesBelow(QStringLiteral("core")))
        EXPECT_FALSE(gui.match(include.target).hasMatch())
            << include.file.toStdString() << " includes " << include.target.toStdString();
}

TEST(Layers, TheWindowKnowsNoSql)
{
    for (const QString &folder : {QStringLiteral("ui"), QStringLiteral("app")})
        for (const Include &include : includesBelow(folder))
            EXPECT_FALSE(include.target.startsWith(QLatin1String("QSql")) ||
                         include.target == QLatin1String("sqlite3.h") ||
                         include.target == QLatin1String("core/book/statement.h"))
                << include.file.toStdString() << " includes " << include.target.toStdString();
}

TEST(Layers, HaveNoCycleOfHeaders)
{
    QMap<QString, QStringList> graph;
    for (const QString &folder :
         {QStringLiteral("core"), QStringLiteral("ui"), QStringLiteral("app")})
        for (const Include &include : includesBelow(folder))
            if (include.file.endsWith(QLatin1String(".h")))
                graph[include.file] << include.target;
    QSet<QString> finished;
    QStringList path;
    // header chains are short; plain recursion reads best here
    const std::function<void(const QString &)> visit = [&](const QString &file) {
        if (finished.contains(file))
            return;
        ASSERT_FALSE(path.contains(file))
            << (path + QStringList{file}).join(QStringLiteral(" -> ")).toStdString();
        path << file;
        for (const QString &next : graph.value(file))
            visit(next);
        path.removeLast();
        finished << file;
    };
    for (const QString &file : graph.keys())
        visit(file);
}

// Every public promise that a person's locale does not change what is read or written.
TEST(Layers, NothingReadsTheProcessLocale)
{
    static const QRegularExpression locale(
        QStringLiteral("QLocale\\(\\)|QLocale::system|setlocale|std::stod|strtod|\\batof\\b"));
    for (const QString &folder :
         {QStringLiteral("core"), QStringLiteral("ui"), QStringLiteral("app")}) {
        QDirIterator files(kRoot + folder, {QStringLiteral("*.cpp"), QStringLiteral("*.h")},
                           QDir::Files, QDirIterator::Subdirectories);
        while (files.hasNext()) {
            QFile file(files.next());
            ASSERT_TRUE(file.open(QIODevice::ReadOnly));
            EXPECT_FALSE(locale.match(QString::fromUtf8(file.readAll())).hasMatch())
                << file.fileName().toStdString();
        }
    }
}

} // namespace
