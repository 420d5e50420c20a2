using Revoicer.Pictures;
using Xunit;

namespace Revoicer.Tests.Pictures;

public sealed class LetteringTests
{
    [Fact]
    public void The_font_of_the_documents_is_taken_where_it_is_installed() =>
        Assert.Equal("DejaVu Sans", Lettering.FamilyAmong(["Arial", "DejaVu Sans", "Verdana"]));

    [Fact]
    public void Else_another_with_Latin_letters_is_taken() =>
        Assert.Equal("Liberation Sans", Lettering.FamilyAmong(["cmex10", "Liberation Serif", "Liberation Sans"]));

    // Fonts of mathematical signs put them where a text font has its letters, and nothing in them tells.
    [Theory]
    [InlineData]
    [InlineData("")]
    [InlineData("cmex10", "msbm10")]
    public void Fonts_that_are_not_known_to_have_Latin_letters_are_not_taken(params string[] installed) =>
        Assert.Null(Lettering.FamilyAmong(installed));

    [Fact]
    public void A_machine_without_fonts_is_told_what_to_do()
    {
        var drawing = ClashPictures.Draw(_ => throw new InvalidOperationException("nothing is drawn"), Lettering.FamilyAmong([]));

        Assert.Equal(
            "the pictures cannot be lettered: none of the fonts DejaVu Sans, Verdana, Noto Sans, Liberation Sans, Arial, "
            + "FreeSans, DejaVu Serif, Noto Serif, Liberation Serif is installed; install one of them and try again",
            Assert.IsType<Drawing.NoFont>(drawing).Reason);
    }
}
