// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/widgets/drop_area.h"

#include "ui/shell/theme.h"
#include "ui/widgets/icons.h"

#include <QClipboard>
#include <QDragEnterEvent>
#include <QDropEvent>
#include <QFileInfo>
#include <QGuiApplication>
#include <QHBoxLayout>
#include <QKeyEvent>
#include <QKeySequence>
#include <QLabel>
#include <QMimeData>
#include <QPainter>
#include <QPainterPath>
#include <QPushButton>
#include <QUrl>

#include <algorithm>

namespace ohmwright::ui {

namespace {

constexpr int kThumb = 52;
constexpr int kThumbGap = 8;
constexpr int kMargin = 18;

QStringList localFiles(const QMimeData &mime)
{
    QStringList paths;
    for (const QUrl &url : mime.urls()) {
        if (url.isLocalFile() && QFileInfo(url.toLocalFile()).isFile())
            paths.push_back(url.toLocalFile());
    }
    return paths;
}

} // namespace

DropArea::DropArea(const Theme &theme, QWidget *parent)
    : QWidget(parent), m_theme(theme), m_words(new QLabel),
      m_button(new QPushButton(themedIcon(theme, QStringLiteral("photo")), tr("Choose photos…")))
{
    setAcceptDrops(true);
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Minimum);
    m_words->setWordWrap(true);
    m_words->setTextFormat(Qt::PlainText);
    m_words->setForegroundRole(QPalette::PlaceholderText);
    auto *row = new QHBoxLayout(this);
    row->setContentsMargins(kMargin, kMargin, kMargin, kMargin);
    row->setSpacing(16);
    row->addWidget(m_words, 1);
    row->addWidget(m_button);
    setFocusProxy(m_button);
    m_button->setAccessibleDescription(tr("Ctrl+V pastes a photo here."));
    connect(m_button, &QPushButton::clicked, this, &DropArea::chooseWanted);
    setPictures({});
}

void DropArea::setPictures(const std::vector<QImage> &pictures)
{
    m_pictures.clear();
    const double ratio = devicePixelRatioF();
    const int side = qRound(kThumb * ratio);
    for (const QImage &picture : pictures) {
        if (picture.isNull())
            continue;
        QImage small =
            picture.scaled(side, side, Qt::KeepAspectRatioByExpanding, Qt::SmoothTransformation);
        small = small.copy((small.width() - side) / 2, (small.height() - side) / 2, side, side);
        small.setDevicePixelRatio(ratio);
        m_pictures.push_back(std::move(small));
    }
    const auto count = static_cast<int>(m_pictures.size());
    m_words->setText(count == 0 ? tr("Drop photos here, or paste one with Ctrl+V.")
                                : tr("Photos so far: %1. Drop or paste more.").arg(count));
    const int shown = std::min(count, 3);
    const int left = kMargin + shown * (kThumb + kThumbGap) + (shown > 0 ? 8 : 0);
    layout()->setContentsMargins(left, kMargin, kMargin, kMargin);
    update();
}

bool DropArea::takeFrom(const QMimeData *mime)
{
    if (!mime)
        return false;
    if (mime->hasUrls()) {
        const QStringList paths = localFiles(*mime);
        if (!paths.isEmpty()) {
            emit filesCame(paths);
            return true;
        }
    }
    if (mime->hasImage()) {
        const auto picture = mime->imageData().value<QImage>();
        if (!picture.isNull()) {
            emit pictureCame(picture);
            return true;
        }
    }
    return false;
}

bool DropArea::paste()
{
    return takeFrom(QGuiApplication::clipboard()->mimeData());
}

void DropArea::keyPressEvent(QKeyEvent *event)
{
    if (!event->matches(QKeySequence::Paste)) {
        QWidget::keyPressEvent(event);
        return;
    }
    if (!paste())
        emit refused(tr("The clipboard holds no photo and no file."));
}

void DropArea::dragEnterEvent(QDragEnterEvent *event)
{
    if (event->mimeData()->hasUrls() || event->mimeData()->hasImage()) {
        m_over = true;
        event->acceptProposedAction();
        update();
    }
}

void DropArea::dragLeaveEvent(QDragLeaveEvent *)
{
    m_over = false;
    update();
}

void DropArea::dropEvent(QDropEvent *event)
{
    m_over = false;
    update();
    if (takeFrom(event->mimeData()))
        event->acceptProposedAction();
    else
        emit refused(tr("What was dropped is neither a photo nor a file on this computer."));
}

void DropArea::paintEvent(QPaintEvent *)
{
    const Tokens &tokens = m_theme.tokens();
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    painter.fillRect(rect(), m_over ? tokens.tint() : tokens.panel);
    // the corners that hold a photo in an album
    const QRectF frame = QRectF(rect()).adjusted(0.75, 0.75, -0.75, -0.75);
    const double arm = m_over ? 26 : 16;
    painter.setPen(
        QPen(m_over ? tokens.blue : tokens.ink, 1.5, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    const auto corner = [&](QPointF at, double x, double y) {
        painter.drawPolyline(QPolygonF{at + QPointF(x * arm, 0), at, at + QPointF(0, y * arm)});
    };
    corner(frame.topLeft(), 1, 1);
    corner(frame.topRight(), -1, 1);
    corner(frame.bottomLeft(), 1, -1);
    corner(frame.bottomRight(), -1, -1);

    const std::size_t shown = std::min<std::size_t>(m_pictures.size(), 3);
    double x = kMargin;
    // the latest ones
    for (std::size_t i = m_pictures.size() - shown; i < m_pictures.size(); ++i) {
        const QRectF place(x, (height() - kThumb) / 2.0, kThumb, kThumb);
        painter.drawImage(place, m_pictures[i]);
        painter.setPen(QPen(tokens.mute, 1));
        painter.drawRect(place.adjusted(0.5, 0.5, -0.5, -0.5));
        x += kThumb + kThumbGap;
    }
}

} // namespace ohmwright::ui
