// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window.h"

#include "app/system_clock.h"
#include "core/book/book.h"
#include "core/book/book_file.h"
#include "ui/shell/book_window.h"
#include "ui/shell/outside.h"
#include "ui/shell/shell_window.h"
#include "ui/shell/theme.h"
#include "ui/start/start_sheet.h"
#include "ui/widgets/empty_page.h"
#include "ui/widgets/passed_on_undo.h"
#include "ui/widgets/steady_wheel.h"

#include <QAction>
#include <QApplication>
#include <QDesktopServices>
#include <QFileDialog>
#include <QFileInfo>
#include <QPushButton>
#include <QScreen>
#include <QSettings>
#include <QStandardPaths>
#include <QUrl>

#include <algorithm>
#include <memory>
#include <optional>
#include <vector>

namespace ohmwright {

namespace {

using ui::BookWindow;
using ui::Outside;
using ui::ShellWindow;
using ui::Theme;
using ui::Tone;

const QString kLastBook = QStringLiteral("last_book");

class RealOutside final : public Outside
{
public:
    QStringList chooseFiles(QWidget *over, const QString &title, const QString &filter) override
    {
        return QFileDialog::getOpenFileNames(over, title, {}, filter);
    }
    QString chooseSaveFile(QWidget *over, const QString &title, const QString &suggestion,
                           const QString &filter) override
    {
        const QString folder = QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation);
        return QFileDialog::getSaveFileName(over, title, folder + u'/' + suggestion, filter);
    }
    void openFile(const QString &path) override
    {
        QDesktopServices::openUrl(QUrl::fromLocalFile(path));
    }
    void openAddress(const QUrl &address) override { QDesktopServices::openUrl(address); }
};

// Room a desktop takes for a window's title bar and frame.
constexpr QSize kFrame(16, 40);

// At its own size where the desktop has room for that, else as large as there is.
void showFitting(ShellWindow &shell)
{
    const QSize room = shell.screen()->availableGeometry().size() - kFrame;
    if (room.width() < shell.width() || room.height() < shell.height())
        shell.showMaximized();
    else
        shell.show();
}

// The open windows, and how a new one comes about.
class Session : public QObject
{
    Q_OBJECT

public:
    explicit Session(QApplication &app) : m_theme(Theme::shadeOf(QApplication::palette()))
    {
        m_theme.applyTo(app);
    }

    void start(const QString &path)
    {
        const QString last = path.isEmpty() ? QSettings().value(kLastBook).toString() : path;
        if (last.isEmpty() || (path.isEmpty() && !QFileInfo::exists(last)))
            showStart({});
        else if (QFileInfo::exists(last))
            open(last);
        else
            showStart(tr("There is no file “%1”.").arg(last));
    }

private:
    void open(const QString &path)
    {
        const std::optional<QString> kept = keptBeforeUpdate(path);
        Result<std::unique_ptr<Book>> book = Book::open(path, m_clock);
        if (!book) {
            showStart(
                QStringList{book.error().sentence, book.error().whatToDo}.join(u' ').trimmed());
            return;
        }
        show(std::move(*book));
        if (kept)
            m_windows.back()->shell().say(
                tr("The book was brought up to date. As it was before it is kept as “%1”.")
                    .arg(QFileInfo(*kept).fileName()));
    }

    // Shows the sheet to begin a book on, in the window that helps to start.
    void beginBook()
    {
        showStart({});
        m_start->showPage(QStringLiteral("new"));
        m_sheet->begin();
        m_start->raise();
        m_start->activateWindow();
    }

    void create()
    {
        const std::optional<Currency> currency = m_sheet->currency();
        if (!currency)
            return;
        QString path = m_outside.chooseSaveFile(m_start.get(), tr("New book"),
                                                tr("build.ohmwright"), tr("Books (*.ohmwright)"));
        if (path.isEmpty())
            return;
        if (QFileInfo(path).suffix().isEmpty())
            path += QStringLiteral(".ohmwright");
        const QString title = QFileInfo(path).completeBaseName();
        Result<std::unique_ptr<Book>> book =
            m_sheet->starter().isEmpty()
                ? Book::create(path, title, *currency, m_clock)
                : createFromStarter(path, m_sheet->starter(), m_sheet->answers(), title, *currency,
                                    m_clock);
        if (!book) {
            m_sheet->setProblem(
                QStringList{book.error().sentence, book.error().whatToDo}.join(u' ').trimmed());
            return;
        }
        m_start->showPage(QStringLiteral("start"));
        show(std::move(*book));
    }

    void leaveSheet()
    {
        m_start->showPage(QStringLiteral("start"));
        const bool aBookIsOpen = std::any_of(m_windows.begin(), m_windows.end(), [](auto &window) {
            return window->shell().isVisible();
        });
        if (aBookIsOpen)
            m_start->hide();
    }

    void chooseAndOpen()
    {
        const QStringList paths = m_outside.chooseFiles(
            QApplication::activeWindow(), tr("Open a book"), tr("Books (*.ohmwright)"));
        if (!paths.isEmpty())
            open(paths.front());
    }

    void show(std::unique_ptr<Book> book)
    {
        QSettings().setValue(kLastBook, QFileInfo(book->path()).absoluteFilePath());
        auto window = std::make_unique<BookWindow>(std::move(book), m_theme, m_outside);
        connect(window.get(), &BookWindow::newWanted, this, [this] { beginBook(); });
        connect(window.get(), &BookWindow::openWanted, this, [this] { chooseAndOpen(); });
        showFitting(window->shell());
        m_windows.push_back(std::move(window));
        if (m_start)
            m_start->hide();
    }

    void showStart(const QString &problem)
    {
        if (!m_start) {
            m_start = std::make_unique<ShellWindow>(m_theme);
            auto *page = new ui::EmptyPage(m_theme, QStringLiteral("book"), tr("No book is open"),
                                           tr("A book is one file that holds a whole build: its "
                                              "parts, its work, its money and its "
                                              "proof. Make a new one, or open one that is there."),
                                           tr("&New book…"));
            QObject::connect(page, &ui::EmptyPage::started, m_start.get(), [this] { beginBook(); });
            QObject::connect(page->addButton(tr("&Open a book…")), &QPushButton::clicked,
                             m_start.get(), [this] { chooseAndOpen(); });
            m_start->addPage(page, tr("Start"), QStringLiteral("book"), QStringLiteral("start"));
            m_sheet = new ui::StartSheet(m_theme);
            connect(m_sheet, &ui::StartSheet::wanted, this, [this] { create(); });
            connect(m_sheet, &ui::StartSheet::closed, this, [this] { leaveSheet(); });
            m_start->addPage(m_sheet, tr("New book"), QStringLiteral("add"), QStringLiteral("new"));
            auto *make = new QAction(tr("&New book…"), m_start.get());
            make->setShortcut(QKeySequence::New);
            auto *open = new QAction(tr("&Open a book…"), m_start.get());
            open->setShortcut(QKeySequence::Open);
            QObject::connect(make, &QAction::triggered, m_start.get(), [this] { beginBook(); });
            QObject::connect(open, &QAction::triggered, m_start.get(), [this] { chooseAndOpen(); });
            m_start->setBookActions({make, open});
        }
        if (!m_start->isVisible())
            showFitting(*m_start);
        m_start->showPage(QStringLiteral("start"));
        if (!problem.isEmpty())
            m_start->say(problem, Tone::Problem);
    }

    SystemClock m_clock;
    Theme m_theme;
    RealOutside m_outside;
    std::vector<std::unique_ptr<BookWindow>> m_windows;
    std::unique_ptr<ShellWindow> m_start;
    ui::StartSheet *m_sheet = nullptr; // a page of m_start
};

} // namespace

bool hasDisplay()
{
    return qEnvironmentVariableIsSet("DISPLAY") || qEnvironmentVariableIsSet("WAYLAND_DISPLAY") ||
           qEnvironmentVariableIsSet("QT_QPA_PLATFORM");
}

int openWindow(QApplication &app, const QString &bookPath)
{
    QCoreApplication::setOrganizationName(QStringLiteral("ohmwright"));
    const ui::SteadyWheel steady(app);
    const ui::PassedOnUndo passed(app);
    Session session(app);
    session.start(bookPath);
    return QApplication::exec();
}

} // namespace ohmwright

#include "window.moc"
