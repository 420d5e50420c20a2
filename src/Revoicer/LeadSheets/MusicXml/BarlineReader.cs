using System.Xml.Linq;
using Revoicer.LeadSheets.Abc;
using Revoicer.Text;

namespace Revoicer.LeadSheets.MusicXml;

/// <summary>Reads repeats, endings and the signs at bar lines.</summary>
internal static class BarlineReader
{
    private const int MostTimes = 99;

    /// <summary>Takes a bar line.</summary>
    /// <param name="line">The element.</param>
    /// <param name="measure">The bar that holds it.</param>
    /// <param name="places">Where elements stand.</param>
    /// <param name="remarks">Takes problems and warnings.</param>
    /// <param name="isInside">Whether music of the bar stands before it.</param>
    public static void Take(XElement line, ReadMeasure measure, XmlPlaces places, Remarks remarks, bool isInside)
    {
        var repeat = line.Child("repeat");
        if (line.Text("location") == "middle" && repeat is not null && isInside)
        {
            remarks.Refuse(places.Of(line), "a repeat sign inside a bar", "the bar parted there into two measures");
            return;
        }

        var signs = measure.Signs;
        signs.IsSegno |= line.Has("segno");
        signs.IsCoda |= line.Has("coda");
        if (repeat is not null)
        {
            TakeRepeat(repeat, signs, places, remarks);
        }

        if (line.Child("ending") is { } ending)
        {
            TakeEnding(ending, signs, places, remarks);
        }

        if (line.Text("location") is not ("left" or "middle"))
        {
            signs.EndsSection |= signs.Times > 0 || line.ChildText("bar-style") is "light-light" or "light-heavy" or "heavy-light" or "heavy-heavy";
        }
    }

    private static void TakeRepeat(XElement repeat, OrderSigns signs, XmlPlaces places, Remarks remarks)
    {
        if (repeat.Text("direction") == "forward")
        {
            signs.Opens = true;
        }
        else if (repeat.Text("times") is not { } text || Elements.Whole(text) is >= 1 and <= MostTimes)
        {
            signs.Times = Elements.Whole(repeat.Text("times")) ?? 2;
        }
        else
        {
            remarks.Refuse(places.Of(repeat), $"a repeat of '{Quoted.Text(repeat.Text("times")!)}' times", $"a number from 1 to {MostTimes}");
        }
    }

    private static void TakeEnding(XElement ending, OrderSigns signs, XmlPlaces places, Remarks remarks)
    {
        if (ending.Text("type") != "start")
        {
            signs.EndsEnding = true;
            return;
        }

        var numbers = (ending.Text("number") ?? "").Split([',', ' '], StringSplitOptions.RemoveEmptyEntries).Select(n => Elements.Whole(n.TrimEnd('.'))).ToArray();
        if (numbers.Length is > 0 and <= MostTimes && numbers.All(n => n is >= 1 and <= MostTimes))
        {
            signs.Ending = [.. numbers.Select(n => n!.Value).Distinct()];
        }
        else
        {
            remarks.WarnOnce(places.Of(ending), $"an ending with the number '{Quoted.Text(ending.Text("number") ?? "")}' is heard every time", "numbers of the times through, such as 1, 2");
        }
    }
}
