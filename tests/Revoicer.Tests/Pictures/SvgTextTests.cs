using System.Text;
using Revoicer.Pictures;
using Xunit;

namespace Revoicer.Tests.Pictures;

public sealed class SvgTextTests
{
    /// <summary>
    /// SVG 1.1, W3C (from memory): viewBox lets a picture be scaled (7.7), lists of lengths end without a comma (4.2), a
    /// list of families is a property's value as in CSS 2 (10.10).
    /// </summary>
    [Fact]
    public void Clips_are_shared_and_numbered_anew_and_words_made_sound()
    {
        const string written = """
            <?xml version="1.0" encoding="utf-8" ?>
            <svg xmlns="http://www.w3.org/2000/svg" width="20" height="10">
            	<clipPath id="cl_1f"><rect width="20" height="10"/></clipPath>
            	<g clip-path="url(#cl_1f)"><path d="M0 0L1 1"/></g>
            	<clipPath id="cl_20"><rect width="20" height="10"/></clipPath>
            	<g clip-path="url(#cl_20)">
            		<text font-family="DejaVu Sans" x="1, 2.5, " y="3, ">
            			ab
            		</text>
            	</g>
            	<clipPath id="cl_21"><rect width="5" height="5"/></clipPath>
            	<g clip-path="url(#cl_21)"/>
            </svg>
            """;
        const string expected = """
            <svg xmlns="http://www.w3.org/2000/svg" width="20" height="10" viewBox="0 0 20 10">
              <clipPath id="clip0">
                <rect width="20" height="10" />
              </clipPath>
              <g clip-path="url(#clip0)">
                <path d="M0 0L1 1" />
              </g>
              <g clip-path="url(#clip0)">
                <text font-family="DejaVu Sans, Verdana, sans-serif" x="1, 2.5" y="3">ab</text>
              </g>
              <clipPath id="clip1">
                <rect width="5" height="5" />
              </clipPath>
              <g clip-path="url(#clip1)" />
            </svg>

            """;

        Assert.Equal(expected.ReplaceLineEndings("\n"), Encoding.UTF8.GetString(SvgText.Tidy(written)));
    }
}
