// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/checks/plot_view.h"

#include "ui/checks/check_words.h"
#include "ui/checks/plot_files.h"
#include "ui/checks/plot_scene.h"
#include "ui/shell/outside.h"
#include "ui/shell/theme.h"
#include "ui/widgets/section_title.h"

#include <QContextMenuEvent>
#include <QGraphicsView>
#include <QMenu>
#include <QPrintDialog>
#include <QPrinter>
#include <QToolButton>
#include <QVBoxLayout>
#include <QWheelEvent>

namespace ohmwright::ui {

namespace {

constexpr int kHeight = 320;

// The page scrolls, not the plot.
class StillView : public QGraphicsView
{
public:
    StillView()
    {
        setFrameShape(QFrame::NoFrame);
        setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        setVerticalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
        setAlignment(Qt::AlignLeft | Qt::AlignTop);
        setRenderHints(QPainter::Antialiasing | QPainter::TextAntialiasing);
        setInteractive(false);
        setFocusPolicy(Qt::NoFocus);
        setContextMenuPolicy(Qt::NoContextMenu);
    }

protected:
    void wheelEvent(QWheelEvent *event) override { event->ignore(); }
};

} // namespace

PlotView::PlotView(Plot plot, const Theme &theme, Outside &outside, QWidget *parent)
    : QWidget(parent), m_plot(std::move(plot)), m_theme(theme), m_outside(outside),
      m_view(new StillView), m_button(new QToolButton), m_menu(new QMenu(this))
{
    auto *column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(10);
    auto *title = new SectionTitle(theme, m_plot.title);
    column->addWidget(title);
    m_menu->addAction(tr("&Save as PDF or SVG…"), this, &PlotView::save);
    m_menu->addAction(tr("&Print…"), this, &PlotView::print);
    m_button->setText(tr("Save or print"));
    m_button->setAccessibleName(tr("Save or print the plot: %1").arg(m_plot.title));
    m_button->setToolButtonStyle(Qt::ToolButtonTextOnly);
    m_button->setPopupMode(QToolButton::InstantPopup);
    m_button->setMenu(m_menu);
    m_button->setFocusPolicy(Qt::StrongFocus);
    title->addAtEnd(m_button);
    m_view->setFixedHeight(kHeight);
    m_view->setAccessibleName(m_plot.title);
    m_view->setAccessibleDescription(spokenPlot(m_plot));
    m_view->installEventFilter(this);
    column->addWidget(m_view);
    setAccessibleName(m_plot.title);
    setAccessibleDescription(spokenPlot(m_plot));
    dress();
    connect(&theme, &Theme::changed, this, &PlotView::dress);
}

PlotView::~PlotView() = default;

void PlotView::dress()
{
    auto scene = std::make_unique<PlotScene>(
        m_plot, screenLook(m_theme.tokens(), m_theme.font(Lettering::Small)));
    m_view->setScene(scene.get());
    m_view->setBackgroundBrush(m_theme.tokens().paper);
    m_scene = std::move(scene);
    layOut();
}

void PlotView::layOut()
{
    m_scene->layOut(m_view->size());
}

bool PlotView::eventFilter(QObject *watched, QEvent *event)
{
    if (watched == m_view && event->type() == QEvent::Resize)
        layOut();
    return QWidget::eventFilter(watched, event);
}

void PlotView::contextMenuEvent(QContextMenuEvent *event)
{
    m_menu->popup(event->globalPos());
}

void PlotView::save()
{
    const QString path = m_outside.chooseSaveFile(this, tr("Save the plot"), plotFileName(m_plot),
                                                  tr("PDF file (*.pdf);;SVG drawing (*.svg)"));
    if (path.isEmpty())
        return;
    const Outcome saved = savePlot(m_plot, path);
    if (saved)
        emit said(tr("The plot is saved as %1.").arg(path), false);
    else
        emit said(toldOf(saved.error()), true);
}

void PlotView::print()
{
    auto printer = std::make_shared<QPrinter>(QPrinter::HighResolution);
    printer->setDocName(m_plot.title);
    auto *dialog = new QPrintDialog(printer.get(), window());
    dialog->setAttribute(Qt::WA_DeleteOnClose);
    connect(dialog, &QDialog::accepted, this, [this, printer] {
        printPlot(m_plot, *printer);
        emit said(tr("The plot is sent to %1.").arg(printer->printerName()), false);
    });
    // the dialog works on the printer until it is gone, whatever becomes of this page
    connect(dialog, &QObject::destroyed, dialog, [printer] {});
    dialog->open();
}

} // namespace ohmwright::ui
