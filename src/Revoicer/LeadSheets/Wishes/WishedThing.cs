using Revoicer.Music;
using Revoicer.Values;

namespace Revoicer.LeadSheets.Wishes;

/// <summary>What of a chord's voicing a wish speaks of. Bells are those that the player reads and presses.</summary>
public abstract record WishedThing
{
    private WishedThing()
    {
    }

    /// <summary>The thing as it is asked for: "the bass on G3".</summary>
    public abstract string Words { get; }

    /// <summary>The thing as it is forbidden: "no bass on G3".</summary>
    public virtual string Forbidden => $"not {Words}";

    /// <summary>The bell that the lower or only foot plays.</summary>
    /// <param name="Note">The pedal; null where the feet are to rest.</param>
    public sealed record BassBell(WrittenNote? Note) : WishedThing
    {
        /// <inheritdoc/>
        public override string Words => Note is { } note ? $"the bass on {note}" : "the feet at rest";
    }

    /// <summary>The highest baton of the left hand.</summary>
    /// <param name="Note">The baton; null where the left hand is to rest.</param>
    public sealed record LeftHandTop(WrittenNote? Note) : WishedThing
    {
        /// <inheritdoc/>
        public override string Words => Note is { } note ? $"{note} on top in the left hand" : "the left hand at rest";
    }

    /// <summary>A bell that the chord strikes, with whatever limb.</summary>
    /// <param name="Note">The bell.</param>
    public sealed record OneBell(WrittenNote Note) : WishedThing
    {
        /// <inheritdoc/>
        public override string Words => $"{Note} among the bells";
    }

    /// <summary>The bells that the chord strikes: these, each at least once, and no others. The tune's are not counted.</summary>
    /// <param name="Notes">The bells, lowest first; at least one, none twice.</param>
    public sealed record WholeVoicing(Items<WrittenNote> Notes) : WishedThing
    {
        /// <inheritdoc/>
        public override string Words => $"the bells {string.Join(" ", Notes)} and no others";

        /// <inheritdoc/>
        public override string Forbidden => $"not the bells {string.Join(" ", Notes)} alone";
    }

    /// <summary>The tone of the chord in its lowest bell, which makes its inversion.</summary>
    /// <param name="Degree">1 the root, 3 the third, 5 the fifth, 7 the seventh.</param>
    public sealed record LowestTone(int Degree) : WishedThing
    {
        /// <inheritdoc/>
        public override string Words => $"the {NameOf(Degree)} lowest";

        /// <summary>"third".</summary>
        public static string NameOf(int degree) => degree switch
        {
            1 => "root",
            3 => "third",
            5 => "fifth",
            7 => "seventh",
            _ => throw new ArgumentOutOfRangeException(nameof(degree), degree, "root, third, fifth or seventh lie lowest: 1, 3, 5, 7"),
        };
    }

    /// <summary>When its bells are struck.</summary>
    /// <param name="Name">The figure's plain name: "rolled".</param>
    public sealed record FigureNamed(string Name) : WishedThing
    {
        /// <inheritdoc/>
        public override string Words => Name == Silence ? "no accompaniment" : $"the figure '{Name}'";

        /// <inheritdoc/>
        public override string Forbidden => Name switch
        {
            Roll => "no rolls",
            Silence => "some accompaniment",
            _ => $"not the figure '{Name}'",
        };
    }

    /// <summary>The name of the figure in which nothing is struck.</summary>
    public const string Silence = "silent";

    /// <summary>The name of the figure in which bells are struck upward one shortly after another.</summary>
    public const string Roll = "rolled";
}
