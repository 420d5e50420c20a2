namespace Revoicer.Chords;

/// <summary>The degrees of a chord while its suffix is read; begins as the major triad.</summary>
internal sealed class ChordDegrees
{
    private readonly SortedSet<Degree> _degrees = new(Comparer<Degree>.Create(
        (a, b) => (a.Number, a.Alteration).CompareTo((b.Number, b.Alteration))))
    {
        new Degree(1), new Degree(3), new Degree(5),
    };

    public IEnumerable<Degree> All => _degrees;

    public bool HasMinorThird => _degrees.Contains(new Degree(3, -1));

    public bool HasSeventh => HasNumber(7);

    /// <summary>Whether a ninth and what lies above it have something to stand on.</summary>
    public bool HasSixthOrSeventh => HasNumber(6) || HasSeventh;

    /// <summary>Whether the suffix asks for root and perfect fifth alone, as "5" does.</summary>
    public bool IsOpenFifth { get; private set; }

    public bool Has(Degree degree) => _degrees.Contains(degree);

    public void Add(Degree degree)
    {
        _degrees.Add(degree);

        // An altered thirteenth is the raised fifth under another name: the perfect fifth makes way for it.
        if (degree == new Degree(13, -1))
        {
            _degrees.Remove(new Degree(5));
        }
    }

    /// <summary>Puts an altered degree in the place of the natural one.</summary>
    public void Alter(Degree degree)
    {
        _degrees.Remove(new Degree(degree.Number));
        Add(degree);
    }

    /// <summary>Leaves root and perfect fifth.</summary>
    public void OpenFifth()
    {
        Omit(3);
        IsOpenFifth = true;
    }

    /// <summary>Takes the degrees of a number away; false where there are none.</summary>
    public bool Omit(int number) => _degrees.RemoveWhere(d => d.Number == number) > 0;

    public void Suspend(params ReadOnlySpan<int> numbers)
    {
        Omit(3);
        foreach (var number in numbers)
        {
            _degrees.Add(new Degree(number));
        }
    }

    /// <summary>Builds thirds on the seventh, up to 7, 9, 11 or 13.</summary>
    public void Stack(int upTo, int seventh)
    {
        _degrees.Add(new Degree(7, seventh));
        if (upTo >= 9)
        {
            _degrees.Add(new Degree(9));
        }

        // Over a minor third the eleventh is at home. A major third and a perfect eleventh do not live together: an
        // eleventh chord gives up the third, a thirteenth chord the eleventh (docs/chord-symbols.md).
        if (upTo == 11 || (upTo == 13 && HasMinorThird))
        {
            _degrees.Remove(new Degree(3));
            _degrees.Add(new Degree(11));
        }

        if (upTo == 13)
        {
            _degrees.Add(new Degree(13));
        }
    }

    private bool HasNumber(int number) => _degrees.Any(d => d.Number == number);
}
