using Revoicer.Values;

namespace Revoicer.Chords;

/// <summary>How a degree element of MusicXML 4.0 changes a chord kind (degree-type-value).</summary>
internal enum DegreeChangeType
{
    /// <summary>A degree more.</summary>
    Add,

    /// <summary>A degree of the kind is raised or lowered.</summary>
    Alter,

    /// <summary>A degree of the kind is left out.</summary>
    Subtract,
}

/// <summary>
/// A degree added to a chord kind, altered or left out. The alteration of an added degree is counted from the dominant
/// chord (major and perfect intervals, but a minor seventh), of the others from the degree as the kind has it.
/// </summary>
/// <param name="Type">What is done.</param>
/// <param name="Number">The degree's number; 1 to 13.</param>
/// <param name="Alteration">Semitones.</param>
internal sealed record DegreeChange(DegreeChangeType Type, int Number, int Alteration)
{
    private const int Seventh = 7;

    /// <summary>The changes that turn one set of degrees into another.</summary>
    public static Items<DegreeChange> Between(IEnumerable<Degree> from, IEnumerable<Degree> to)
    {
        var gone = from.Except(to).ToList();
        var come = to.Except(from).ToList();
        var changes = new List<DegreeChange>();
        foreach (var degree in come)
        {
            if (gone.FindIndex(g => g.Number == degree.Number) is >= 0 and var at)
            {
                changes.Add(new DegreeChange(DegreeChangeType.Alter, degree.Number, degree.Alteration - gone[at].Alteration));
                gone.RemoveAt(at);
            }
            else
            {
                changes.Add(new DegreeChange(DegreeChangeType.Add, degree.Number, degree.Alteration - OfDominant(degree.Number)));
            }
        }

        changes.AddRange(gone.Select(g => new DegreeChange(DegreeChangeType.Subtract, g.Number, 0)));
        return changes.ToItems();
    }

    /// <summary>Makes the change; false where the degrees do not have what is to be altered or left out.</summary>
    /// <param name="degrees">The degrees so far.</param>
    public bool ApplyTo(ICollection<Degree> degrees)
    {
        var had = degrees.Where(d => d.Number == Number).ToArray();
        if (Type != DegreeChangeType.Add && had.Length == 0)
        {
            return false;
        }

        if (Type == DegreeChangeType.Add)
        {
            AddOnce(new Degree(Number, OfDominant(Number) + Alteration));
            return true;
        }

        degrees.Remove(had[0]);
        if (Type == DegreeChangeType.Alter)
        {
            AddOnce(new Degree(Number, had[0].Alteration + Alteration));
        }

        return true;

        void AddOnce(Degree degree)
        {
            if (!degrees.Contains(degree))
            {
                degrees.Add(degree);
            }
        }
    }

    private static int OfDominant(int number) => number == Seventh ? -1 : 0;
}
