// SPDX-License-Identifier: GPL-3.0-or-later
// ohmwright: the window, or a headless command.
#include "app/command.h"
#include "app/log.h"
#include "app/system_clock.h"
#include "app/window.h"

#include <QApplication>
#include <QCoreApplication>
#include <QFileInfo>

#include "resources/resources.h"
#include <algorithm>
#include <cstdio>

using namespace ohmwright;

namespace {

void nameApplication()
{
    QCoreApplication::setApplicationName(QStringLiteral("ohmwright"));
    QCoreApplication::setApplicationVersion(QStringLiteral(OHMWRIGHT_VERSION));
    registerResources();
}

int headless(const Commands &commands, const QStringList &words)
{
    QTextStream out(stdout);
    QTextStream err(stderr);
    const SystemClock clock;
    return runCommand(commands, words, {out, err, clock});
}

// A command's name or an option that is answered in the terminal; anything else is a book to open.
bool isHeadless(const Commands &commands, const QString &first)
{
    return first == QLatin1String("help") || first.startsWith(u'-') ||
           std::any_of(commands.begin(), commands.end(),
                       [&](const auto &c) { return c->name() == first; });
}

} // namespace

int main(int argc, char **argv)
{
    // before Qt starts: what it has to say goes to the log, not to the terminal
    startLog();
    QStringList words;
    for (int i = 1; i < argc; ++i)
        words << QString::fromLocal8Bit(argv[i]);
    const Commands commands = allCommands();
    if (!words.isEmpty() && isHeadless(commands, words.front())) {
        const auto command = std::find_if(commands.begin(), commands.end(), [&](const auto &c) {
            return c->name() == words.front();
        });
        if (command != commands.end() && (*command)->draws()) {
            // without a display Qt would abort; drawing to a file needs none
            qputenv("QT_QPA_PLATFORM", "offscreen");
            const QApplication app(argc, argv); // plots are drawn by widgets' libraries
            nameApplication();
            return headless(commands, words);
        }
        const QCoreApplication app(argc, argv);
        nameApplication();
        return headless(commands, words);
    }
    // a mistyped command must not open a window that a script then waits for
    if (const QString book = words.value(0); !book.isEmpty() && !QFileInfo::exists(book) &&
                                             !book.contains(u'.') && !book.contains(u'/')) {
        std::fprintf(stderr,
                     "ohmwright: There is no command and no book “%s”. `ohmwright help` lists the "
                     "commands.\n",
                     book.toUtf8().constData());
        return kExitBadUse;
    }
    if (!hasDisplay()) {
        std::fputs("ohmwright: There is no display to open the window on. `ohmwright help` lists "
                   "what works without.\n",
                   stderr);
        return kExitBadUse;
    }
    QApplication app(argc, argv);
    nameApplication();
    return openWindow(app, words.value(0));
}
