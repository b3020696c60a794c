using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>Tells from two boxes whether a person sits on a horse.</summary>
public static class Mount
{
    // Where the rider's parts lie in the horse's box (ears to hooves, in heights of it, 0 = top): own reading of about 50 marked pictures,
    // with margin for boxes that lose legs or take the rider's foot for the horse's.
    private const double HeadLowest = 0.35;
    private const double FootHighest = 0.12;
    private const double FootLowest = 0.88;

    // Where the picture cuts the horse off below the belly, the rider's foot may reach the box's end; then the head must stand above the horse's
    // (a helper's does not). A box ends at the picture's edge when nearer to it than this share of its height.
    private const double CutOffShare = 0.03;
    private const double HeadLowestCutOff = 0.05;
    private const double FootLowestCutOff = 1.05;

    // Rider's box over horse's box, heights. A rider is about 1.3 m from helmet to sole, a horse 1.6 to 2.3 m from ears to hoof.
    private const double SizeLeast = 0.3;
    private const double SizeMost = 1.5;

    // A rider sits within the horse's length; a little outside when the box loses head or tail.
    private const double SideMargin = 0.05;

    /// <summary>Whether <paramref name="person"/> sits on <paramref name="horse"/>: on its back, feet well above its hooves, of a fitting size.</summary>
    /// <param name="pictureHeightPx">Height of the picture.</param>
    public static bool Holds(BoxPx person, BoxPx horse, double pictureHeightPx)
    {
        var cutOff = horse.Bottom > pictureHeightPx - CutOffShare * horse.Height;
        var size = person.Height / horse.Height;
        double head = (person.Y - horse.Y) / horse.Height, foot = (person.Bottom - horse.Y) / horse.Height;
        var across = Across(person, horse);
        return size is > SizeLeast and < SizeMost
            && head < (cutOff ? HeadLowestCutOff : HeadLowest) && foot > FootHighest && foot < (cutOff ? FootLowestCutOff : FootLowest)
            && across is > -SideMargin and < 1 + SideMargin;
    }

    /// <summary>
    /// Who sits on which horse: one person a horse and one horse a person, best fitting pair first (near the middle of a sure horse, a sure person).
    /// </summary>
    public static IReadOnlyDictionary<Detection, Detection> Pairs(IReadOnlyList<Detection> seen, double pictureHeightPx)
    {
        ArgumentNullException.ThrowIfNull(seen);
        var fitting = from person in seen
                      where person.Kind == DetectedKind.Person
                      from horse in seen
                      where horse.Kind == DetectedKind.Horse && Holds(person.Box, horse.Box, pictureHeightPx)
                      orderby 2 * Math.Abs(Across(person.Box, horse.Box) - 0.5) - horse.Score - person.Score
                      select (person, horse);
        var pairs = new Dictionary<Detection, Detection>();
        var taken = new HashSet<Detection>();
        foreach (var (person, horse) in fitting)
            if (!pairs.ContainsKey(person) && taken.Add(horse)) pairs[person] = horse;
        return pairs;
    }

    /// <summary>Where the person's middle stands along the horse's box: 0 its left edge, 1 its right.</summary>
    public static double Across(BoxPx person, BoxPx horse) => (person.Centre.X - horse.X) / horse.Width;
}
