package squeezewell.desktop.screens.live;

import java.awt.Rectangle;
import java.util.function.UnaryOperator;

/**
 * Where the parts of a running practice stand in a window, in device pixels. Word, number and
 * column keep their size whatever the text size; small text grows, and keys, second lines and the
 * ribbon give way first.
 *
 * @param unit device pixels of a density-independent pixel of word, number and column
 * @param text the same for small text
 * @param wide whether there is a pane to look at and one to touch
 * @param brief whether keys and second lines are left out
 * @param columns how many actions stand side by side
 * @param touch the pane to touch; the whole window where there is one
 */
record LivePlaces(
    double unit,
    double text,
    boolean wide,
    boolean brief,
    int columns,
    Rectangle touch,
    Rectangle header,
    Rectangle strip,
    Rectangle word,
    Rectangle vessel,
    Rectangle number,
    Rectangle feedback,
    Rectangle ribbon,
    Rectangle pads,
    Rectangle actions,
    Rectangle caution) {
  private static final double TWO_PANES = 840;

  /** A window to lay out, and what has to find room in it. */
  record Room(int width, int height, double textSize, boolean ribbon, int advice, int notice) {}

  /**
   * Lays a window out.
   *
   * @param room how large it is, in device pixels, and what has to find room in it: the text size
   *     (1 is usual), the ribbon, the lines of what was found and of what must be known
   */
  static LivePlaces of(Room room) {
    return room.width() >= TWO_PANES && room.height() >= 360 ? wide(room) : tall(room);
  }

  private static LivePlaces tall(Room room) {
    double unit = 1;
    if (room.width() >= 600) {
      unit = Math.max(1, Math.min(1.4, Math.min(room.width() / 412.0, room.height() / 700.0)));
    }
    unit = Math.min(unit, Math.min(room.width() / 330.0, room.height() / 540.0));
    for (double text = room.textSize(); ; text -= 0.05) {
      LivePlaces places = tall(room, unit, Math.max(1, text));
      if (places.vessel().height >= 130 * unit || text <= 1) {
        return places;
      }
    }
  }

  private static LivePlaces tall(Room room, double unit, double text) {
    double width = room.width() / unit;
    double height = room.height() / unit;
    boolean low = height < 700;
    boolean large = text > 1.25;
    double side = 16;
    double inner = width - 2 * side;
    double gap = low ? 8 : 12;
    double y = 8;
    double header = low || large ? 38 + 14 * (text - 1) : 56;
    Rectangle headerAt = at(unit, side, y, inner, header);
    y += header + (room.notice() > 0 ? 4 + 26 * text : 0) + 6;
    double strip =
        room.advice() > 0 ? 30 + 24 * text * room.advice() : (low ? 34 : 40) + 16 * (text - 1);
    Rectangle stripAt = at(unit, side, y, inner, strip);
    y += strip + 4;
    double word = low ? 72 : 80;
    Rectangle wordAt = at(unit, side - 2, y, inner + 4, word);
    y += word + 4;
    double feedback = (low ? 54 : 60) + 12 * (text - 1);
    boolean ribbon = room.ribbon() && !low && !large && room.advice() == 0;
    double cautionLines = 12 * text * 5 > inner / 6 ? 2 : 1;
    double caution = low ? 20 * text : 14 + 14 * text * cautionLines;
    int columns = large ? 2 : 4;
    double action = large ? (low ? 52 : 68) : low ? 62 : 80;
    double actions = large ? 2 * action + 8 : action;
    double rest =
        height - y - gap - feedback - (ribbon ? 12 + 54 : 0) - gap - gap - actions - caution;
    double pads = low ? 104 : Math.min(230, Math.max(104, 166 + (rest - 166 - 232) * 0.3));
    if (rest - pads < 150) {
      pads = Math.max(104, rest - 150);
    }
    double vessel = rest - pads;
    double column = low ? 112 : 136;
    Rectangle vesselAt = at(unit, side, y, column, vessel);
    Rectangle numberAt = at(unit, side + column + 40, y, inner - column - 40, vessel);
    y += vessel + gap;
    Rectangle feedbackAt = at(unit, side, y, inner, feedback);
    y += feedback;
    Rectangle ribbonAt = at(unit, side, y + 12, inner, ribbon ? 54 : 0);
    y += (ribbon ? 66 : 0) + gap;
    Rectangle padsAt = at(unit, side, y, inner, pads);
    y += pads + gap;
    Rectangle actionsAt = at(unit, side, y, inner, actions);
    y += actions;
    return new LivePlaces(
        unit,
        unit * text,
        false,
        low || large,
        columns,
        new Rectangle(0, 0, room.width(), room.height()),
        headerAt,
        stripAt,
        wordAt,
        vesselAt,
        numberAt,
        feedbackAt,
        ribbonAt,
        padsAt,
        actionsAt,
        at(unit, side, y, inner, caution));
  }

  private static LivePlaces wide(Room room) {
    boolean big = room.height() >= 700;
    boolean low = room.height() < 480;
    double text = Math.min(room.textSize(), big ? 2 : 1.5);
    double right = Math.max(340, Math.min(420, room.width() / 3.0));
    double left = room.width() - right;
    double margin = big ? 24 : 16;
    double inner = left - 2 * margin;
    double word = low ? 80 : big ? 128 : 96;
    double header = big ? 56 : 40;
    double y = margin / 2;
    Rectangle headerAt = at(1, margin, y, inner, header);
    y += header;
    Rectangle wordAt = at(1, margin - 3, y, inner + 6, word * 1.1);
    y += word * 1.1 + 4;
    boolean ribbon = room.ribbon() && !low;
    double ribbonHigh = big ? 84 : 60;
    double vessel = room.height() - y - margin - (ribbon ? ribbonHigh + 16 : 0);
    double column = big ? 240 : low ? 130 : 170;
    Rectangle vesselAt = at(1, margin, y, column, vessel);
    Rectangle numberAt = at(1, margin + column + 48, y, inner - column - 48, vessel);
    Rectangle ribbonAt =
        at(1, margin, room.height() - margin - ribbonHigh, inner, ribbon ? ribbonHigh : 0);
    double x = left + margin - 4;
    double across = right - 2 * margin + 8;
    double gap = big ? 14 : 8;
    double top = margin;
    if (room.notice() > 0) {
      top += 4 + 26 * text;
    }
    double strip =
        room.advice() > 0 ? 30 + 24 * text * room.advice() : (big ? 52 : 44) + 12 * (text - 1);
    Rectangle stripAt = at(1, x, top, across, strip);
    top += strip + gap;
    double feedback = big ? 96 : low ? 54 : 68;
    Rectangle feedbackAt = at(1, x, top, across, feedback);
    top += feedback + gap;
    double caution = 12 + 14 * text * (text > 1.15 ? 2 : 1);
    double action = big ? 92 : low ? 48 : 62;
    double bottom = room.height() - caution;
    Rectangle actionsAt = at(1, x, bottom - 2 * action - 8, across, 2 * action + 8);
    return new LivePlaces(
        1,
        text,
        true,
        !big && text > 1.25,
        2,
        new Rectangle((int) left, 0, room.width() - (int) left, room.height()),
        headerAt,
        stripAt,
        wordAt,
        vesselAt,
        numberAt,
        feedbackAt,
        ribbonAt,
        at(1, x, top, across, bottom - 2 * action - 8 - gap - top),
        actionsAt,
        at(1, x, bottom, across, caution));
  }

  /** The same with the pane to touch on the left; a phone's layout is the same for both hands. */
  LivePlaces mirrored() {
    if (!wide) {
      return this;
    }
    int shift = touch.width;
    UnaryOperator<Rectangle> left = r -> new Rectangle(r.x - touch.x, r.y, r.width, r.height);
    UnaryOperator<Rectangle> right = r -> new Rectangle(r.x + shift, r.y, r.width, r.height);
    return new LivePlaces(
        unit,
        text,
        true,
        brief,
        columns,
        left.apply(touch),
        right.apply(header),
        left.apply(strip),
        right.apply(word),
        right.apply(vessel),
        right.apply(number),
        left.apply(feedback),
        right.apply(ribbon),
        left.apply(pads),
        left.apply(actions),
        left.apply(caution));
  }

  private static Rectangle at(double unit, double x, double y, double width, double height) {
    int left = (int) Math.round(x * unit);
    int top = (int) Math.round(y * unit);
    return new Rectangle(
        left,
        top,
        (int) Math.round((x + width) * unit) - left,
        Math.max(0, (int) Math.round((y + height) * unit) - top));
  }
}
