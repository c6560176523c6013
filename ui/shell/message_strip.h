// SPDX-License-Identifier: GPL-3.0-or-later
// One plain sentence at the foot of the window: what was done, or what went wrong and what to do.
// Never in the way, never gone by itself: it stays until read away or followed by another.
#pragma once

#include <QWidget>

#include <functional>

class QLabel;
class QPushButton;
class QToolButton;

namespace ohmwright::ui {

class Theme;

enum class Tone {
    Told,    // something happened
    Problem, // something did not
};

class MessageStrip : public QWidget
{
    Q_OBJECT

public:
    explicit MessageStrip(const Theme &theme, QWidget *parent = nullptr);

    void say(const QString &sentence, Tone tone = Tone::Told);
    // With one thing to do about it: "Show it", "Undo". The strip goes when it is pressed.
    void sayWithAction(const QString &sentence, const QString &actionText,
                       std::function<void()> action, Tone tone = Tone::Told);
    void dismiss();
    [[nodiscard]] QString sentence() const;

signals:
    void dismissed();

protected:
    void paintEvent(QPaintEvent *event) override;

private:
    const Theme &m_theme;
    QWidget *m_shape;
    QLabel *m_sentence;
    QPushButton *m_action;
    QToolButton *m_close;
    std::function<void()> m_do;
    Tone m_tone = Tone::Told;
};

} // namespace ohmwright::ui
